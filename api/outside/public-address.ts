import ipaddr from 'ipaddr.js'

/** RFC 4291, 2.4, and the registry of IANA: of IPv6 only 2000::/3 is given out as global unicast addresses. */
const GLOBAL_V6 = ipaddr.IPv6.parseCIDR('2000::/3')

/**
 * Whether an address belongs to the open internet: no private, loopback, link-local, shared, unique-local, multicast, documentation or reserved
 * one, and none that carries another inside it (IPv4-mapped, NAT64, 6to4, Teredo), since that other may be any of these.
 *
 * @example isPublicAddress('169.254.169.254') // false
 */
export function isPublicAddress(text: string): boolean {
  // Four decimal numbers alone: "127.1" and "0x7f000001" are read as addresses too, by some.
  if (ipaddr.IPv4.isValidFourPartDecimal(text)) return ipaddr.IPv4.parse(text).range() === 'unicast'
  if (!ipaddr.IPv6.isValid(text) || text.includes('%')) return false
  const address = ipaddr.IPv6.parse(text)
  return address.range() === 'unicast' && address.match(GLOBAL_V6)
}
