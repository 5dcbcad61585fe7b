import { afterAll, beforeAll, expect, it } from 'vitest'
import type { PostedSighting } from '../../core/pricing/schema.ts'
import { createInstall } from '../../db/install.ts'
import { ownOpenPrices } from '../../db/open-prices.ts'
import { insertSighting } from '../../db/sightings.ts'
import type { Viewer } from '../../db/viewer.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'
import { granted, install, person, product, sighting, store } from '../support/rows.ts'

let test: TestDatabase
let member: Viewer
beforeAll(async () => {
  test = await testDatabase()
  granted(await createInstall(test.db, install))
  member = await person(test.db)
})
afterAll(() => test.close())

type Seen = Partial<PostedSighting> & { goneOn?: string }
const SHELF = { seenOn: '2026-10-01', priceMinor: 5000 }
const SALE: Seen = { seenOn: '2026-10-03', priceMinor: 4000, condition: 'sale' }
const USED: Seen = { seenOn: '2026-10-02', priceMinor: 2000, condition: 'used' }
const UNDER_WAS: Seen = { seenOn: '2026-10-03', priceMinor: 4000, printedRegularMinor: 5000 }
const GONE = { goneOn: '2026-10-05' }

// The cases are those of `foundGone` and `productGone`; each lists what members saw, then which of it is told.
it.each<[string, Seen[], number[]]>([
  ['what nobody found gone', [SHELF, SALE, USED], [0, 1, 2]],
  ['no sale that is gone, and the regular price', [SHELF, { ...SALE, ...GONE }], [0]],
  ['no other report of the sale that is gone', [SHELF, { ...SALE, ...GONE }, { ...SALE, seenOn: '2026-10-04' }], [0]],
  [
    'a sale at another price',
    [
      { ...SALE, ...GONE },
      { ...SALE, priceMinor: 3900 },
    ],
    [1],
  ],
  [
    'a sale that was seen again on the day on which it was gone',
    [
      { ...SALE, ...GONE },
      { ...SALE, seenOn: '2026-10-05' },
    ],
    [0, 1],
  ],
  ['nothing new where the regular price is gone, and the used piece', [{ ...SHELF, ...GONE }, SALE, USED], [2]],
  [
    'what was seen since',
    [
      { ...SHELF, ...GONE },
      { ...SALE, seenOn: '2026-10-05' },
    ],
    [0, 1],
  ],
  ['the regular price where a tag under its own "was" is gone', [SHELF, { ...UNDER_WAS, ...GONE }], [0]],
  ['no used piece that is gone, and everything else', [SHELF, SALE, { ...USED, ...GONE }, { ...USED, priceMinor: 2100 }], [0, 1, 3]],
  ['what was found gone before it was seen', [{ ...SALE, goneOn: '2026-10-02' }], [0]],
])('tells %s', async (_what, seen, told) => {
  const [{ id: productId }, { id: storeId }] = [await product(test.db), await store(test.db)]
  const ids: string[] = []
  for (const { goneOn, ...fields } of seen) {
    const body = sighting(productId, storeId, fields)
    granted(await insertSighting(test.db, member, body, null))
    if (goneOn) await test.db.updateTable('sighting').set({ gone_on: goneOn }).where('id', '=', body.id).execute()
    ids.push(body.id)
  }
  const prices = await ownOpenPrices(test.db, '2026-09-01')
  expect(
    prices
      .filter(({ id }) => ids.includes(id))
      .map(({ id }) => ids.indexOf(id))
      .toSorted(),
  ).toEqual(told)
})
