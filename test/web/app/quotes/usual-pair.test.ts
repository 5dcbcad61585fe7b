import { expect, it } from 'vitest'
import { usualPair } from '../../../../web/app/quotes/usual-pair.ts'

const build = (id: string, totalMinor: number, suggested = false) => ({
  id,
  suggested,
  cost: { today: { complete: true as const, goodsMinor: totalMinor, discountMinor: 0, deliveryMinor: 0, taxMinor: 0, totalMinor } },
})
const idsOf = (...builds: Parameters<typeof usualPair>[0]) => usualPair(builds).map(({ id }) => id)

it('shows first the two that the comparison with the cheapest says nothing of, the suggested one in front', () => {
  expect(idsOf(build('a', 300), build('b', 100), build('c', 200, true))).toEqual(['c', 'a'])
  expect(idsOf(build('a', 300, true), build('b', 100), build('c', 200))).toEqual(['a', 'c'])
  expect(idsOf(build('a', 300), build('b', 100, true), build('c', 200), build('d', 400))).toEqual(['c', 'a'])
})
