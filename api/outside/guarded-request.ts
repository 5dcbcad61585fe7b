import { lookup } from 'node:dns/promises'
import type { IncomingHttpHeaders } from 'node:http'
import { request } from 'node:https'
import { isIP } from 'node:net'
import { isPublicAddress } from './public-address.ts'

/** What a test puts in place: another resolver, another notion of what may be reached, a port and an authority of its own. */
export interface Reach {
  /** Every address of a host. */
  resolve: (host: string) => Promise<string[]>
  mayReach: (address: string) => boolean
  port: number
  ca?: string
}
export const OPEN_INTERNET: Reach = {
  resolve: async (host) => (await lookup(host, { all: true })).map(({ address }) => address),
  mayReach: isPublicAddress,
  port: 443,
}

/** The host leads to an address that is none of the open internet's, or to none at all. */
export class AddressRefused extends Error {
  override name = 'AddressRefused'
}

/** The answer is larger than anything that is wanted of the other side. */
export class AnswerTooLong extends Error {
  override name = 'AnswerTooLong'
}

export interface Asked {
  method: 'GET' | 'POST'
  headers: Record<string, string>
  body?: Uint8Array
  /** All in all, from the look-up to the last byte. */
  mostMs: number
  mostAnswerBytes: number
}
export interface Answered {
  status: number
  headers: IncomingHttpHeaders
  body: Buffer
}

/** Errors: AddressRefused where any address of the host is not allowed: a name with one good and one bad address is up to something. */
async function checkedAddress(host: string, { resolve, mayReach }: Reach): Promise<string> {
  const addresses = await resolve(host)
  const [first] = addresses
  if (first === undefined) throw new AddressRefused('the host has no address')
  if (!addresses.every(mayReach)) throw new AddressRefused('the host leads to an address that is not on the open internet')
  return first
}

/**
 * Asks a stranger's https address. The connection goes to the very address that was checked: the host is looked up once, so that a name which
 * answers differently a moment later leads nowhere else. A redirect is an answer like any other and is not followed.
 *
 * Errors: AddressRefused; AnswerTooLong; whatever the network says; a timeout.
 */
export async function guardedRequest(url: URL, asked: Asked, reach: Reach = OPEN_INTERNET): Promise<Answered> {
  const until = AbortSignal.timeout(asked.mostMs)
  const host = url.hostname.replace(/\.$/, '')
  const address = await Promise.race([checkedAddress(host, reach), failAt(until)])
  return new Promise((resolve, reject) => {
    const sent = request(
      {
        host,
        servername: host,
        port: reach.port,
        path: `${url.pathname}${url.search}`,
        method: asked.method,
        headers: asked.headers,
        // No connection of before, to an address that nobody checked now.
        agent: false,
        signal: until,
        minVersion: 'TLSv1.2',
        ...(reach.ca === undefined ? {} : { ca: reach.ca }),
        lookup: (_host, options, done) =>
          options.all === true ? done(null, [{ address, family: isIP(address) }]) : done(null, address, isIP(address)),
      },
      (answer) => {
        const parts: Buffer[] = []
        let bytes = 0
        answer.on('data', (part: Buffer) => {
          bytes += part.length
          parts.push(part)
          if (bytes > asked.mostAnswerBytes) answer.destroy(new AnswerTooLong('the answer is too long'))
        })
        answer.on('error', reject)
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body: Buffer.concat(parts) }))
      },
    )
    sent.on('error', reject)
    sent.end(asked.body)
  })
}

const failAt = (signal: AbortSignal): Promise<never> =>
  new Promise((_, reject) => signal.addEventListener('abort', () => reject(signal.reason as Error), { once: true }))
