import { request } from 'node:https'
import { isIP } from 'node:net'
import { checkedAddress, failAt, OPEN_INTERNET, type Reach } from '../push/guarded-post.ts'

/** Some five thousand prices with long names; more is no feed of a club. */
const MOST_BYTES = 8_000_000
/** All in all, from the look-up to the last byte. */
const MOST_MS = 30_000

export interface Got {
  status: number
  etag: string | null
  body: Buffer
}

/** The answer is larger than a club's prices can be. */
export class TooLong extends Error {
  override name = 'TooLong'
}

/**
 * Reads from a stranger's https address, under the same guard as messages are sent: the connection goes to the very address that was checked,
 * and no redirect is followed.
 *
 * Errors: AddressRefused; TooLong; whatever the network says; a timeout after thirty seconds.
 */
export async function guardedGet(url: URL, headers: Record<string, string>, reach: Reach = OPEN_INTERNET): Promise<Got> {
  const until = AbortSignal.timeout(MOST_MS)
  const host = url.hostname.replace(/\.$/, '')
  const address = await Promise.race([checkedAddress(host, reach), failAt(until)])
  return new Promise((resolve, reject) => {
    const sent = request(
      {
        host,
        servername: host,
        port: reach.port,
        path: `${url.pathname}${url.search}`,
        headers: { ...headers, 'accept-encoding': 'identity' },
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
          if (bytes > MOST_BYTES) answer.destroy(new TooLong('the answer is too long'))
        })
        answer.on('error', reject)
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, etag: answer.headers.etag ?? null, body: Buffer.concat(parts) }))
      },
    )
    sent.on('error', reject)
    sent.end()
  })
}
