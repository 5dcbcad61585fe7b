import { BlockList, isIP } from 'node:net'
import type { Ctx } from '../context.ts'

const LOOPBACK_NAMES = new Set(['localhost', '127.0.0.1', '[::1]'])

export const isLoopbackName = (hostname: string): boolean => LOOPBACK_NAMES.has(hostname) || hostname.endsWith('.localhost')

/** How the reader reached this site. */
export interface Site {
  /** Scheme, host and port as the reader's browser sees them: PUBLIC_URL where it is set, else what the request named. */
  origin: string
  https: boolean
  loopback: boolean
}

/**
 * The site as its reader sees it. The request's own scheme is never believed beyond plain http: behind a proxy only PUBLIC_URL knows better,
 * and X-Forwarded-Proto is a header that anyone can send.
 */
export function readSite(publicUrl: URL | null, requestUrl: string): Site {
  const url = publicUrl ?? new URL(requestUrl)
  return { origin: url.origin, https: url.protocol === 'https:', loopback: isLoopbackName(url.hostname) }
}
export const siteOf = (c: Ctx): Site => c.get('site')

/** Where printed links may point: null on plain http outside this computer, where neither sign-in nor links can be trusted. */
export function linkOrigin(c: Ctx): string | null {
  const site = siteOf(c)
  return site.https || site.loopback ? site.origin : null
}

/** `10.0.0.0/8` and single addresses as a list to ask. Errors: TypeError names the entry that is neither. */
export function addressList(entries: readonly string[]): BlockList {
  const list = new BlockList()
  for (const entry of entries) {
    const [address = '', prefix, ...rest] = entry.split('/')
    const family = isIP(address)
    // "10.0.0.0/" would be read as every address there is.
    const isWhole = prefix === undefined || (/^\d{1,3}$/.test(prefix) && Number(prefix) <= (family === 4 ? 32 : 128))
    if (family === 0 || !isWhole || rest.length > 0) throw new TypeError(`"${entry}" is no address or network.`)
    const type = family === 4 ? 'ipv4' : 'ipv6'
    if (prefix === undefined) list.addAddress(address, type)
    else list.addSubnet(address, Number(prefix), type)
  }
  return list
}

const plainAddress = (address: string): string => address.replace(/^::ffff:(?=\d+\.)/, '')
/** A hop as a proxy writes it: some add the port. @example hopAddress('[2001:db8::1]:4711') // '2001:db8::1' */
const hopAddress = (hop: string): string =>
  plainAddress(
    hop
      .trim()
      .replace(/^\[([^\]]*)\](?::\d+)?$/, '$1')
      .replace(/^(\d+\.[\d.]+):\d+$/, '$1'),
  )

/**
 * Address of the reader, for throttling. X-Forwarded-For counts only as far as it was written by a proxy the operator named:
 * read from its end, the first hop that is no such proxy. Where that hop is no address, whatever stands before it was written by nobody
 * we know, and the proxy itself is counted.
 */
export function clientAddress(c: Ctx): string {
  const peer = plainAddress(c.env?.incoming?.socket?.remoteAddress ?? 'unknown')
  const trusted = c.get('deps').config.trustedProxies
  const isTrusted = (address: string): boolean => isIP(address) !== 0 && trusted.check(address, isIP(address) === 4 ? 'ipv4' : 'ipv6')
  if (!isTrusted(peer)) return peer
  const hops = (c.req.header('x-forwarded-for') ?? '').split(',').map(hopAddress)
  const stranger = hops.reverse().find((hop) => !isTrusted(hop))
  return stranger === undefined || isIP(stranger) === 0 ? peer : stranger
}
