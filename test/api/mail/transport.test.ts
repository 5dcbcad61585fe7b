import { readFile } from 'node:fs/promises'
import { createTransport } from 'nodemailer'
import { afterEach, describe, expect, it } from 'vitest'
import { letterSender, transportOptions, type Letter } from '../../../api/mail/transport.ts'
import { headersOf, openMailbox, type Mailbox } from '../support/mailbox.ts'

const opened: Mailbox[] = []
afterEach(async () => {
  for (const box of opened.splice(0)) await box.close()
})
async function mailbox(options?: Parameters<typeof openMailbox>[0]): Promise<Mailbox> {
  const box = await openMailbox(options)
  opened.push(box)
  return box
}

const FROM = 'tanks@example.org'
const letter: Letter = {
  place: 'Reef club',
  to: 'ida@post.example',
  subject: 'A deal',
  text: 'Plain.',
  html: '<p>Plain.</p>',
  stopUrl: null,
}
const near = (box: Mailbox) => ({ server: new URL(`smtp://127.0.0.1:${box.port}`), from: FROM })
const sender = (box: Mailbox) => letterSender(near(box), 'tanks.example.org')

describe('a letter', () => {
  it('arrives in plain words and in HTML, from the address of the place', async () => {
    const box = await mailbox()
    await sender(box)({ ...letter, stopUrl: 'https://tanks.example.org/m/stop/abc' })
    expect(box.received).toHaveLength(1)
    const [{ from, to, raw }] = box.received as [Mailbox['received'][number]]
    expect([from, to]).toEqual([FROM, ['ida@post.example']])
    const headers = headersOf(raw)
    expect(headers.get('from')).toBe('Reef club <tanks@example.org>')
    expect(headers.get('content-type')).toContain('multipart/alternative')
    // RFC 8058, 3.1: both headers, an https address, and the one value there is.
    expect(headers.get('list-unsubscribe')).toBe('<https://tanks.example.org/m/stop/abc>')
    expect(headers.get('list-unsubscribe-post')).toBe('List-Unsubscribe=One-Click')
    // RFC 3834, 5.
    expect(headers.get('auto-submitted')).toBe('auto-generated')
  })

  it('takes no header from what stands in a catalog or in the name of the place', async () => {
    const box = await mailbox()
    await sender(box)({ ...letter, place: 'Reef\r\nBcc: ole@post.example', subject: 'Deal\r\nBcc: ole@post.example\r\n\r\nbody\u2028x' })
    const [{ to, raw }] = box.received as [Mailbox['received'][number]]
    expect(to).toEqual(['ida@post.example'])
    expect(headersOf(raw).has('bcc')).toBe(false)
    expect(headersOf(raw).get('subject')).toBe('Deal Bcc: ole@post.example body x')
  })

  it('goes to one address even where that address is a list', async () => {
    const box = await mailbox()
    await sender(box)({ ...letter, to: 'ida@post.example, ole@post.example' }).catch(() => undefined)
    for (const { to } of box.received) expect(to).not.toContain('ole@post.example')
  })

  it('fetches nothing that it names', async () => {
    const box = await mailbox()
    const transport = createTransport(transportOptions(near(box), 'tanks.example.org'))
    const text = { path: new URL('../../../package.json', import.meta.url).pathname }
    await expect(transport.sendMail({ from: FROM, to: letter.to, text })).rejects.toThrow('File access rejected')
    expect(box.received).toEqual([])
  })

  it('is not handed to a server that has no TLS, or whose certificate nobody vouches for', async () => {
    const bare = await mailbox()
    const far = { server: new URL(`smtp://mail.example.org:${bare.port}`), from: FROM }
    // The host alone is put right: everything else is what a server far away is spoken to with.
    const send = (options: object) => createTransport({ ...options, host: '127.0.0.1' }).sendMail({ from: FROM, to: letter.to, text: 'x' })
    await expect(send(transportOptions(far, 'x'))).rejects.toMatchObject({ code: 'ETLS' })
    const pair = { cert: await readFile('test/fixtures/tls/first.crt'), key: await readFile('test/fixtures/tls/first.key') }
    const own = await mailbox({ ...pair, disabledCommands: [] })
    const unproven = { server: new URL(`smtp://mail.example.org:${own.port}`), from: FROM }
    await expect(send(transportOptions(unproven, 'x'))).rejects.toThrow(/certificate/i)
    expect([...bare.received, ...own.received]).toEqual([])
  })

  it('tells what the server said where it is not taken', async () => {
    const box = await mailbox()
    box.refuse('mailbox full')
    await expect(sender(box)(letter)).rejects.toThrow('mailbox full')
  })
})
