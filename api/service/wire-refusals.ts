import type { IncomingMessage, Server, ServerResponse } from 'node:http'
import { STATUS_CODES } from 'node:http'
import type { Duplex } from 'node:stream'
import { takesFile } from '../http/body.ts'
import { standingHeaders } from '../http/headers.ts'
import { problemBody } from '../http/problem.ts'

const TOO_SLOW = [408, 'The request did not arrive whole in time. Send it again.'] as const
/** What the parser of requests refuses before there is a request; everything else of its kind is 400. */
const BY_CODE: Record<string, readonly [number, string]> = {
  HPE_HEADER_OVERFLOW: [431, 'The headers of the request are too long. Send fewer cookies and a shorter address.'],
  HPE_CHUNK_EXTENSIONS_OVERFLOW: [413, 'The request has too much beside its body.'],
  ERR_HTTP_REQUEST_TIMEOUT: TOO_SLOW,
}
const NOT_HTTP = [400, 'The request is no well-formed HTTP: check its first line and its headers, Host among them.'] as const

interface WireRefusal {
  status: number
  headers: Record<string, string>
  body: string
}

/** The refusal of what never became a request, with the headers that every answer carries. */
export function wireRefusal(status: number, detail: string, isHttps: boolean): WireRefusal {
  const code = status === 500 ? 'internal' : status === 413 || status === 431 ? 'too_large' : 'malformed'
  const body = JSON.stringify(problemBody(status, code, detail))
  const own = { 'Content-Type': 'application/problem+json', 'Content-Length': String(Buffer.byteLength(body)) }
  return { status, body, headers: { ...standingHeaders(isHttps), ...own } }
}
export const malformedRequest = (isHttps: boolean): WireRefusal => wireRefusal(...NOT_HTTP, isHttps)

function asText({ status, headers, body }: WireRefusal): string {
  const fields = { ...headers, Connection: 'close' }
  const lines = Object.entries(fields).map(([name, value]) => `${name}: ${value}`)
  return [`HTTP/1.1 ${status} ${STATUS_CODES[status] ?? ''}`, ...lines, '', body].join('\r\n')
}

const isHost = (name: string | undefined): boolean => name?.length === 4 && name.toLowerCase() === 'host'

/**
 * True where a request names its Host more than once: Node would take the first, and a proxy before it may have looked at the last. Such a
 * request is refused with 400 (RFC 9112, section 3.2).
 */
export function namesHostTwice({ rawHeaders }: IncomingMessage): boolean {
  let hosts = 0
  for (let at = 0; at < rawHeaders.length; at += 2) if (isHost(rawHeaders[at])) hosts += 1
  return hosts > 1
}

export function refuseMalformed(response: ServerResponse, isHttps: boolean): void {
  const { status, headers, body } = malformedRequest(isHttps)
  response.writeHead(status, { ...headers, Connection: 'close' }).end(body)
}

/** Requests that are being answered, by their connection, and since when. */
type Answering = Map<Duplex, { response: ServerResponse; since: number }>

/** How often the slow ones are looked for, in parts of their time. */
const LOOKS = 6

/** Ends requests whose body is not here after `bodyMs`, whoever sends them: nobody is to hold a connection by dribbling. A file may take longer. */
function refuseSlowBodies(server: Server, answering: Answering, bodyMs: number, refuse: (socket: Duplex) => void): void {
  const look = setInterval(() => {
    const latest = performance.now() - bodyMs
    for (const [socket, { response, since }] of answering) {
      if (since > latest || response.req.complete || takesFile((response.req.url ?? '').split('?')[0] ?? '')) continue
      answering.delete(socket)
      if (response.headersSent) socket.destroy()
      else refuse(socket)
    }
  }, bodyMs / LOOKS)
  look.unref()
  server.on('close', () => clearInterval(look))
}

/** Lets the server itself refuse as the application does: a malformed request line, too long headers, a slow body, an expectation that nobody meets. */
export function refuseOnTheWire(server: Server, isHttps: boolean, bodyMs: number): void {
  const answering: Answering = new Map()
  server.on('request', ({ socket }: IncomingMessage, response: ServerResponse) => {
    answering.set(socket, { response, since: performance.now() })
    response.once('close', () => answering.delete(socket))
  })
  refuseSlowBodies(server, answering, bodyMs, (socket) => socket.end(asText(wireRefusal(...TOO_SLOW, isHttps)), () => socket.destroy()))
  server.on('clientError', (error: NodeJS.ErrnoException, socket: Duplex) => {
    const [status, detail] = BY_CODE[error.code ?? ''] ?? NOT_HTTP
    const refuse = (): unknown => socket.end(asText(wireRefusal(status, detail, isHttps)), () => socket.destroy())
    const open = answering.get(socket)?.response
    if (error.code === 'ECONNRESET' || !socket.writable) socket.destroy()
    else if (open === undefined) refuse()
    // Behind a whole request came one that is none: the first is answered first.
    else if (open.req.complete) open.once('finish', refuse)
    // The request that is being answered is itself broken. A second answer must not be written into the first.
    else if (open.headersSent) socket.destroy()
    else refuse()
  })
  server.on('checkExpectation', (_request: IncomingMessage, response: ServerResponse) => {
    const { status, headers, body } = wireRefusal(
      417,
      'The only expectation that is met here is 100-continue. Send it without Expect.',
      isHttps,
    )
    response.writeHead(status, headers).end(body)
  })
}
