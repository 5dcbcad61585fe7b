import { isIPv6 } from 'node:net'

const GROUPS = 8
/** The least that a provider hands to one customer (RFC 6177, section 2): whoever has one such network has all its addresses. */
const OWN_GROUPS = 4

/**
 * What counts as one place for throttling: an IPv4 address, or the /64 network of an IPv6 one.
 *
 * @example networkOf('2001:db8::7') // '2001:db8:0:0::/64'
 */
export function networkOf(address: string): string {
  const [plain = ''] = address.split('%')
  if (!isIPv6(plain)) return address
  // Four groups are enough of a tail: dotted IPv4 stands in the last two, which are not kept.
  const [head = '', tail] = plain.toLowerCase().split('::')
  const groups = head === '' ? [] : head.split(':')
  if (tail !== undefined) {
    const after = tail === '' ? [] : tail.split(':')
    const length = after.length + (tail.includes('.') ? 1 : 0)
    groups.push(...Array.from({ length: GROUPS - groups.length - length }, () => '0'), ...after)
  }
  return `${groups
    .slice(0, OWN_GROUPS)
    .map((group) => Number.parseInt(group, 16).toString(16))
    .join(':')}::/64`
}
