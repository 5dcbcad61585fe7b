import { expect, it } from 'vitest'
import { openingVersions } from '../../../../web/app/quotes/opening-versions.ts'

const pairOf = (...asked: Parameters<typeof openingVersions>) => Object.values(openingVersions(...asked))

it('opens on what the customer has not been told of yet: the last version and the draft that was edited since', () => {
  expect(pairOf(1, false, false)).toEqual(['1', 'draft'])
  expect(pairOf(3, false, false)).toEqual(['3', 'draft'])
})

it('opens on the last two versions where the draft is the one issued, or that is not known yet', () => {
  expect(pairOf(2, false, true)).toEqual(['1', '2'])
  expect(pairOf(3, false, null)).toEqual(['2', '3'])
})

it('holds a single version against today’s prices', () => {
  expect(pairOf(1, false, true)).toEqual(['1', 'draft'])
  expect(pairOf(1, false, null)).toEqual(['1', 'draft'])
})

it('holds nothing against a draft that is locked', () => {
  expect(pairOf(2, true, false)).toEqual(['1', '2'])
  expect(pairOf(1, true, false)).toEqual(['1', '1'])
})
