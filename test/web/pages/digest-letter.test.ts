import { expect, it } from 'vitest'
import { digestLetter } from '../../../web/pages/digest-letter.ts'

const deal = (listed: boolean) => ({ what: 'Heater: $20.00', where: 'Somewhere', url: 'http://club.test/prices/x', listed })
const letter = (...listed: boolean[]): string =>
  digestLetter({ place: 'Brindle', deals: listed.map(deal), more: 0, watchesUrl: '/watches', stopUrl: '/stop' }).text

it('says that members saw what they saw, and never that they saw what is of the store’s own list', () => {
  expect(letter(false)).toMatch(/^Members of Brindle saw this:[^]*as a member saw them\.$/m)
  const ofList = letter(true, true)
  expect(ofList).toMatch(/^These are at or under what you watch for at Brindle:[^]*with tax, as the price list has them\.$/m)
  expect(ofList).not.toMatch(/saw|member/i)
  expect(letter(true, false)).toMatch(/^These are [^]*as a member saw them or the price list has them\.$/m)
})
