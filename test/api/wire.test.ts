import { connect } from 'node:net'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { listen, type Listening } from '../../api/service/listen.ts'

let server: Listening
const faults: unknown[] = []
beforeAll(async () => {
  server = await listen({
    fetch: async (request) => {
      const { pathname } = new URL(request.url)
      if (pathname === '/breaks') throw new Error('secret')
      if (pathname === '/slow') await request.text().catch(() => '')
      if (pathname === '/api/imports') await request.text()
      return new Response('fine')
    },
    port: 0,
    host: '127.0.0.1',
    isHttps: true,
    tls: null,
    onFault: (error) => faults.push(error),
    bodyMs: 600,
  })
})
afterAll(() => server.close(1_000))

/** Sends bytes as they are, and reads until the server ends the connection or `enough` has come. */
function say(text: string): Promise<string> {
  return new Promise((resolve, reject) => {
    let heard = ''
    const socket = connect(server.port, '127.0.0.1', () => socket.write(text))
    socket.on('data', (chunk) => (heard += chunk.toString()))
    socket.on('error', reject)
    socket.on('close', () => resolve(heard))
  })
}
/** As `say`, followed by one byte every tenth of a second for as long as the server listens. */
function dribble(head: string): Promise<string> {
  return new Promise((resolve) => {
    let heard = ''
    const socket = connect(server.port, '127.0.0.1', () => socket.write(head))
    const drops = setInterval(() => socket.write('x'), 100)
    socket.on('data', (chunk) => (heard += chunk.toString()))
    socket.on('error', () => undefined)
    socket.on('close', () => {
      clearInterval(drops)
      resolve(heard)
    })
  })
}
const bodyOf = (answer: string): Record<string, unknown> =>
  JSON.parse(answer.slice(answer.indexOf('\r\n\r\n') + 4)) as Record<string, unknown>

describe('what never becomes a request', () => {
  it.each([
    ['a request line that is none', 'hello\r\n\r\n', 400],
    ['a header that is none', 'GET / HTTP/1.1\r\nHost: localhost\r\n: x\r\n\r\n', 400],
    ['no Host', 'GET / HTTP/1.1\r\nConnection: close\r\n\r\n', 400],
    ['a Host that is none', 'GET / HTTP/1.1\r\nHost: a b\r\nConnection: close\r\n\r\n', 400],
    ['two Hosts', 'GET / HTTP/1.1\r\nHost: localhost\r\nhOST: other.test\r\n\r\n', 400],
    ['two Hosts that are one', 'GET / HTTP/1.1\r\nHost: localhost\r\nHost: localhost\r\nConnection: close\r\n\r\n', 400],
    ['two lengths', 'POST / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 1\r\nTransfer-Encoding: chunked\r\n\r\n', 400],
    ['headers without end', `GET / HTTP/1.1\r\nHost: localhost\r\nX: ${'x'.repeat(20_000)}\r\n\r\n`, 431],
    ['an expectation nobody meets', 'GET / HTTP/1.1\r\nHost: localhost\r\nExpect: miracles\r\nConnection: close\r\n\r\n', 417],
    ['an application that breaks', 'GET /breaks HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n', 500],
  ])('%s is refused as everything is: problem details, with the headers of every answer', async (_what, text, status) => {
    const answer = await say(text)
    expect(answer).toMatch(new RegExp(`^HTTP/1.1 ${status} `))
    for (const header of [
      /\r\ncontent-type: application\/problem\+json\r\n/i,
      /\r\ncontent-security-policy: default-src 'none'/i,
      /\r\nx-content-type-options: nosniff\r\n/i,
      /\r\nreferrer-policy: no-referrer\r\n/i,
      /\r\ncache-control: no-store\r\n/i,
      /\r\nstrict-transport-security: max-age=31536000\r\n/i,
    ])
      expect(answer).toMatch(header)
    expect(bodyOf(answer)).toMatchObject({ status, errors: [] })
    expect(answer).not.toContain('secret')
  })
  it('keeps what broke for the log', () => {
    expect(faults).toEqual([new Error('secret')])
  })
  it('is refused where it begins well and breaks in its body', async () => {
    const answer = await say('POST /slow HTTP/1.1\r\nHost: localhost\r\nTransfer-Encoding: chunked\r\n\r\nno length\r\n')
    expect(answer.match(/HTTP\/1\.1 \d+/g)).toEqual(['HTTP/1.1 400'])
  })
  it('is refused where its body does not come, and where it comes by drops', async () => {
    const head = 'POST /slow HTTP/1.1\r\nHost: localhost\r\nContent-Length: 100\r\n\r\n'
    const [silent, dribbled] = await Promise.all([say(head), dribble(head)])
    for (const answer of [silent, dribbled]) {
      expect(answer).toMatch(/^HTTP\/1\.1 408 /)
      expect(answer).toMatch(/\r\ncontent-security-policy: default-src 'none'/i)
      expect(bodyOf(answer)).toMatchObject({ status: 408 })
    }
  })
  it('is cut off without a second answer where the first went out before its body was here', async () => {
    const answer = await dribble('POST / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 100\r\n\r\n')
    expect(answer.match(/HTTP\/1\.1 \d+/g)).toEqual(['HTTP/1.1 200'])
    expect(await dribble('GET / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 100\r\n\r\n')).toMatch(/^HTTP\/1\.1 200 /)
  })
  it('takes longer where it is a file', async () => {
    const answer = await dribble(
      'POST /api/imports?kind=products HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Length: 15\r\n\r\n',
    )
    expect(answer).toMatch(/^HTTP\/1\.1 200 /)
  })
  it('is one answer, and what came before it stays answered', async () => {
    const answer = await say('GET / HTTP/1.1\r\nHost: localhost\r\n\r\nhello\r\n\r\n')
    expect(answer.match(/HTTP\/1\.1 \d+/g)).toHaveLength(2)
    expect(answer).toMatch(/^HTTP\/1\.1 200 /)
  })
})
