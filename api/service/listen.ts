import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import { createServer as createSecureServer } from 'node:https'
import type { AddressInfo } from 'node:net'
import { getRequestListener, RequestError } from '@hono/node-server'
import { followCertificate, readCertificate, type CertificateFiles } from './certificate.ts'
import { malformedRequest, namesHostTwice, refuseMalformed, refuseOnTheWire, wireRefusal } from './wire-refusals.ts'

type Fetch = (request: Request, env: unknown) => Response | Promise<Response>

export interface Listening {
  port: number
  /** Takes no new connection, lets what is running finish; after `withinMs` cuts what is left. */
  close(withinMs: number): Promise<void>
}

/** A port that another program holds. */
export class PortInUse extends Error {
  readonly port: number
  constructor(port: number) {
    super(`Port ${port} is taken by another program. Stop that one, or choose another with PORT.`)
    this.port = port
  }
}

/** An address that this computer does not have, or a port that this account may not open. */
export class AddressRefused extends Error {}

const PORT_OF_ALL = 1024
function listenFault(error: NodeJS.ErrnoException, host: string, port: number): Error {
  if (error.code === 'EADDRINUSE') return new PortInUse(port)
  if (error.code === 'EACCES' && port < PORT_OF_ALL)
    return new AddressRefused(`PORT ${port} may not be opened by this account. Choose one from ${PORT_OF_ALL} on with PORT.`)
  if (['EADDRNOTAVAIL', 'ENOTFOUND', 'EAI_AGAIN', 'EINVAL', 'EACCES'].includes(error.code ?? ''))
    return new AddressRefused(
      `HOST is "${host}", which is no address of this computer. Write 127.0.0.1, 0.0.0.0 for all of them, or one it has.`,
    )
  return error
}

/** What never reached the application: a Host that is none, an address that is none. Anything else is a bug, and told to nobody but the log. */
function answerLost(error: unknown, { isHttps, onFault }: Pick<Wire, 'isHttps' | 'onFault'>): Response {
  const isTheirs = error instanceof RequestError
  if (!isTheirs) onFault(error)
  const { status, headers, body } = isTheirs ? malformedRequest(isHttps) : wireRefusal(500, 'This should not have happened.', isHttps)
  return new Response(body, { status, headers })
}

interface Wire {
  fetch: Fetch
  port: number
  host: string
  /** True where readers speak https, if only to a proxy. */
  isHttps: boolean
  onFault: (error: unknown) => void
  /** Files of our own certificate; null where this server speaks plain http. */
  tls: CertificateFiles | null
  /** Within what a body that is no file has to be here; 30 s unless a test says so. */
  bodyMs?: number
}

type Listener = ReturnType<typeof getRequestListener>
/** A missing Host is refused with everything else that makes no address: Node's own refusal carries no headers. */
const OPTIONS = {
  requireHostHeader: false,
  // Headers come in one packet; the slowest telephone has sent them after a second or two.
  headersTimeout: 20_000,
  // The largest file at 100 kB a second.
  requestTimeout: 300_000,
  connectionsCheckingInterval: 5_000,
}
/** A draft of 200 kB at 7 kB a second: slower than any line on which the desk can be used. */
const BODY_MS = 30_000

/** A server over TLS, which takes up a renewed certificate without a restart; over plain http where there is none. */
async function serverOf(tls: CertificateFiles | null, listener: Listener, onFault: Wire['onFault']): Promise<Server> {
  if (tls === null) return createServer(OPTIONS, listener)
  const certificate = await readCertificate(tls)
  const server = createSecureServer({ ...OPTIONS, ...certificate, minVersion: 'TLSv1.2' }, listener)
  const unfollow = followCertificate(tls, certificate, { take: (renewed) => server.setSecureContext(renewed), onFault })
  server.on('close', unfollow)
  return server
}

/** Errors: PortInUse; AddressRefused; ConfigError of the certificate; what else the system says of the address. */
export async function listen({ fetch, port, host, ...wire }: Wire): Promise<Listening> {
  const answer = getRequestListener(fetch, { errorHandler: (error) => answerLost(error, wire) })
  const listener: Listener = async (request, response) =>
    namesHostTwice(request as IncomingMessage) ? refuseMalformed(response as ServerResponse, wire.isHttps) : answer(request, response)
  const server = await serverOf(wire.tls, listener, wire.onFault)
  refuseOnTheWire(server, wire.isHttps, wire.bodyMs ?? BODY_MS)
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => reject(listenFault(error, host, port)))
    server.listen(port, host, () =>
      resolve({ port: (server.address() as AddressInfo).port, close: (withinMs) => closeServer(server, withinMs) }),
    )
  })
}

function closeServer(server: Server, withinMs: number): Promise<void> {
  return new Promise((resolve) => {
    const cut = setTimeout(() => server.closeAllConnections(), withinMs)
    server.close(() => {
      clearTimeout(cut)
      resolve()
    })
    server.closeIdleConnections()
  })
}
