import { expect, it } from 'vitest'
import { clubAddress } from '../../db/club-address.ts'

// RFC 3986, section 6.2: case, the usual port and an empty query are no difference; a fragment is never sent.
it.each([
  'https://reef.example/open-prices',
  'https://reef.example/open-prices#',
  'https://reef.example/open-prices#prices',
  'https://reef.example/open-prices?',
  'https://reef.example./open-prices',
  'https://reef.example../open-prices',
  'https://reef.example:443/open-prices',
  'HTTPS://Reef.EXAMPLE/open-prices',
  'https://reef.example/./open-prices',
])('%s is the one address', (spelling) => expect(clubAddress(spelling)).toBe('https://reef.example/open-prices'))

it.each(['https://reef.example/Open-prices', 'https://reef.example/open-prices?all=1', 'https://a.reef.example/open-prices'])(
  '%s is another one',
  (address) => expect(clubAddress(address)).not.toBe('https://reef.example/open-prices'),
)
