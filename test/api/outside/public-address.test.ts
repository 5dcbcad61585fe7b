import fc from 'fast-check'
import { BlockList } from 'node:net'
import { describe, expect, it } from 'vitest'
import { isPublicAddress } from '../../../api/outside/public-address.ts'

/**
 * What is not the open internet: the special-purpose registries of IANA (RFC 6890 and its updates), written down here apart from the package that
 * the guard asks, and held in Node's own lists.
 */
const NOT_PUBLIC_V4 = [
  '0.0.0.0/8', '10.0.0.0/8', '100.64.0.0/10', '127.0.0.0/8', '169.254.0.0/16', '172.16.0.0/12', '192.0.0.0/24', '192.0.2.0/24', '192.88.99.0/24',
  '192.168.0.0/16', '198.18.0.0/15', '198.51.100.0/24', '203.0.113.0/24', '224.0.0.0/4', '240.0.0.0/4', '255.255.255.255/32',
] // prettier-ignore
const NOT_PUBLIC_V6 = [
  '::/128', '::1/128', '::/96', '::ffff:0:0/96', '64:ff9b::/96', '64:ff9b:1::/48', '100::/64', '2001::/32', '2001:2::/48', '2001:10::/28', '2001:db8::/32',
  '2002::/16', '3fff::/20', '5f00::/16', 'fc00::/7', 'fe80::/10', 'fec0::/10', 'ff00::/8',
] // prettier-ignore

const split = (range: string): [string, number] => [range.slice(0, range.indexOf('/')), Number(range.slice(range.indexOf('/') + 1))]
const v4Text = (number: number): string => [24, 16, 8, 0].map((shift) => (number >>> shift) & 255).join('.')
const v6Text = (groups: readonly number[]): string => groups.map((group) => group.toString(16)).join(':')
const v4Number = (text: string): number => text.split('.').reduce((sum, part) => ((sum << 8) | Number(part)) >>> 0, 0)
function v6Groups(text: string): number[] {
  const [head = '', tail] = text.split('::')
  const of = (part: string): number[] => part.split(':').filter(Boolean).map((group) => Number.parseInt(group, 16)) // prettier-ignore
  const [front, back] = [of(head), of(tail ?? '')]
  return tail === undefined ? front : [...front, ...Array.from({ length: 8 - front.length - back.length }, () => 0), ...back]
}

const listed = new BlockList()
for (const range of NOT_PUBLIC_V4) listed.addSubnet(...split(range), 'ipv4')

describe('an address of the open internet', () => {
  it.each(['93.184.215.14', '1.1.1.1', '8.8.4.4', '172.15.255.255', '172.32.0.1', '2606:2800:21f:cb07:6820:80da:af6b:8b2c', '2a00::1'])(
    'is %s',
    (text) => expect(isPublicAddress(text)).toBe(true),
  )

  it.each([
    // The address by which servers at providers tell their secrets, and how the same is written otherwise.
    '169.254.169.254', '::ffff:169.254.169.254', '::ffff:a9fe:a9fe', '64:ff9b::a9fe:a9fe', '2002:a9fe:a9fe::', 'fd00:ec2::254',
    '127.0.0.1', '127.1', '0x7f000001', '2130706433', '0177.0.0.1', '::1', '0:0:0:0:0:0:0:1', '::', '0.0.0.0', '::127.0.0.1',
    '10.0.0.1', '192.168.1.1', '172.16.0.1', '100.64.0.1', 'fe80::1', 'fe80::1%eth0', '2606:2800::1%eth0', 'fd12::1', 'ff02::1', '255.255.255.255',
    '4000::1', 'localhost', 'example.org', '', '1.2.3', '1.2.3.4.5', ' 1.1.1.1', '1.1.1.1:443', '[2606:2800::1]',
  ])('is not %j', (text) => expect(isPublicAddress(text)).toBe(false)) // prettier-ignore

  it('is none anywhere in the ranges that are given to other uses', () => {
    fc.assert(
      fc.property(fc.constantFrom(...NOT_PUBLIC_V4), fc.nat(2 ** 32 - 1), (range, draw) => {
        const [base, bits] = split(range)
        const address = v4Text((v4Number(base) | (bits === 32 ? 0 : draw >>> bits)) >>> 0)
        expect(isPublicAddress(address), address).toBe(false)
        expect(isPublicAddress(`::ffff:${address}`), address).toBe(false)
      }),
      { numRuns: 400 },
    )
    fc.assert(
      fc.property(fc.constantFrom(...NOT_PUBLIC_V6), fc.array(fc.nat(0xffff), { minLength: 8, maxLength: 8 }), (range, draw) => {
        const [base, bits] = split(range)
        const groups = v6Groups(base).map((group, i) => {
          const kept = Math.min(16, Math.max(0, bits - 16 * i))
          return (group | ((draw[i] ?? 0) & (0xffff >>> kept))) & 0xffff
        })
        expect(isPublicAddress(v6Text(groups)), v6Text(groups)).toBe(false)
      }),
      { numRuns: 400 },
    )
  })

  it('carries none of the others inside it', () => {
    fc.assert(
      fc.property(fc.nat(2 ** 32 - 1), (number) => {
        const text = v4Text(number >>> 0)
        const [high, low] = [(number >>> 16).toString(16), (number & 0xffff).toString(16)]
        for (const carrier of [
          `::ffff:${text}`,
          `::${text}`,
          `64:ff9b::${high}:${low}`,
          `2002:${high}:${low}::1`,
          `::ffff:0:${high}:${low}`,
        ])
          expect(isPublicAddress(carrier), carrier).toBe(false)
      }),
      { numRuns: 300 },
    )
  })

  it('is every other one of the older kind, but for three small ones that nobody can serve from', () => {
    // RFC 7534, 7535 and 7450: for other services; the guard refuses them too.
    const others = new BlockList()
    for (const range of ['192.31.196.0/24', '192.52.193.0/24', '192.175.48.0/24']) others.addSubnet(...split(range), 'ipv4')
    fc.assert(
      fc.property(fc.nat(2 ** 32 - 1), (number) => {
        const text = v4Text(number >>> 0)
        expect(isPublicAddress(text), text).toBe(!listed.check(text) && !others.check(text))
      }),
      { numRuns: 500 },
    )
  })
})
