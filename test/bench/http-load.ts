import { Agent, request } from 'node:http'

export interface Shot {
  method: 'GET' | 'POST'
  path: string
  headers: Record<string, string>
  body?: string
}

/** As many as a busy evening brings at once; more only queue in the server. */
const CONNECTIONS = 16

function fire(agent: Agent, origin: URL, shot: Shot, expected: number): Promise<void> {
  return new Promise((resolve, reject) => {
    const headers = shot.body === undefined ? shot.headers : { ...shot.headers, 'content-length': String(Buffer.byteLength(shot.body)) }
    const sent = request(
      { agent, hostname: origin.hostname, port: origin.port, method: shot.method, path: shot.path, headers },
      (answer) => {
        if (answer.statusCode !== expected) reject(new Error(`${shot.method} ${shot.path} answered ${answer.statusCode}`))
        answer.resume().once('end', resolve)
      },
    )
    sent.once('error', reject).end(shot.body)
  })
}

/** Requests a second that a server answers as expected, over kept connections, for a while. Errors: throws at the first other answer. */
export async function rateOf(origin: string, next: () => Shot, expected: number, forMs: number): Promise<number> {
  const agent = new Agent({ keepAlive: true, maxSockets: CONNECTIONS })
  const url = new URL(origin)
  const started = performance.now()
  let answered = 0
  const line = async (): Promise<void> => {
    while (performance.now() - started < forMs) {
      await fire(agent, url, next(), expected)
      answered += 1
    }
  }
  await Promise.all(Array.from({ length: CONNECTIONS }, line))
  const rate = (answered / (performance.now() - started)) * 1000
  agent.destroy()
  return rate
}
