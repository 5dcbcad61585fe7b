import type { Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { createAdaptorServer } from '@hono/node-server'

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

export function listen(fetch: Fetch, port: number, host: string): Promise<Listening> {
  const server = createAdaptorServer({ fetch }) as Server
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => reject(error.code === 'EADDRINUSE' ? new PortInUse(port) : error))
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
