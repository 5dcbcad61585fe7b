import type { IncomingMessage, Server, ServerResponse } from 'node:http'
import { STATUS_CODES } from 'node:http'
import type { Duplex } from 'node:stream'
import { standingHeaders } from '../http/headers.ts'
import { problemBody } from '../http/problem.ts'

/** What the parser of requests refuses before there is a request; everything else of its kind is 400. */
const BY_CODE: Record<string, readonly [number, string]> = {
  HPE_HEADER_OVERFLOW: [431, 'The headers of the request are too long. Send fewer cookies and a shorter address.'],
  HPE_CHUNK_EXTENSIONS_OVERFLOW: [413, 'The request has too much beside its body.'],
  ERR_HTTP_REQUEST_TIMEOUT: [408, 'The request did not arrive whole in time. Send it again.'],
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

/** Lets the server itself refuse as the application does: a malformed request line, too long headers, an expectation that nobody meets. */
export function refuseOnTheWire(server: Server, isHttps: boolean): void {
  const answering = new WeakMap<Duplex, ServerResponse>()
  server.on('request', ({ socket }: IncomingMessage, response: ServerResponse) => {
    answering.set(socket, response)
    response.once('close', () => answering.delete(socket))
  })
  server.on('clientError', (error: NodeJS.ErrnoException, socket: Duplex) => {
    const [status, detail] = BY_CODE[error.code ?? ''] ?? NOT_HTTP
    const refuse = (): unknown => socket.end(asText(wireRefusal(status, detail, isHttps)), () => socket.destroy())
    const open = answering.get(socket)
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
