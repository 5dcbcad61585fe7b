import { expect, it } from 'vitest'
import { countryName } from '../../core/country-name.ts'

/** Codes and names: ISO 3166-1, from memory. */
it.each([
  ['GE', 'Georgia'],
  ['de', 'Germany'],
  [' us ', 'United States'],
])('tells the country of %j', (code, name) => {
  expect(countryName(code)).toBe(name)
})

it.each(['Germany', 'G', '', 'QX', 'ZZ', 'EU', '12'])('knows no country of the code %j', (typed) => {
  expect(countryName(typed)).toBeNull()
})
