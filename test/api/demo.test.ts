import { afterAll, beforeAll, expect, it } from 'vitest'
import { drawDemoPictures } from '../../api/demo/demo-pictures.ts'
import { learnPrices } from '../../api/outlook/learn-prices.ts'
import { loadOutlook } from '../../api/outlook/load-outlook.ts'
import { outlookView } from '../../api/outlook/outlook-view.ts'
import { pictureTypeOf } from '../../core/catalog/picture.ts'
import { byDateOf, outlookLines } from '../../core/pricing/by-date.ts'
import { adviceOf } from '../../core/pricing/line-advice.ts'
import { cheaperElsewhere } from '../../core/quote/cheaper-elsewhere.ts'
import { discountOf } from '../../core/quote/quote-market.ts'
import { CLUB, PEOPLE } from '../../db/demo/club.ts'
import { productId } from '../../db/demo/product-entry.ts'
import { DEMO_SEED, seedDemo, type SeededDemo } from '../../db/demo/seed-demo.ts'
import { findPicture, findPictureBytes } from '../../db/pictures.ts'
import { findRevision } from '../../db/revisions.ts'
import { civilDateAt } from '../../core/dates.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'

let test: TestDatabase
let demo: SeededDemo
const today = civilDateAt(Date.now(), CLUB.timeZone)
beforeAll(async () => {
  test = await testDatabase()
  const passwords = { member: 'm', advisor: 'a', manager: 'c' }
  demo = await seedDemo(test.db, { seed: DEMO_SEED, today, passwords, hash: async (password) => password })
})
afterAll(() => test.close())

it('some products of the demo have a picture of ours, each another one, and the others none', async () => {
  await drawDemoPictures(test.db)
  const hashes = []
  for (const name of ['Wendlemere 40 breeder', 'Thornby Frame 36', 'Halden Row 36']) {
    const picture = await findPicture(test.db, productId(name))
    expect(picture, name).toMatchObject({ width: 600, height: 450, version: 1 })
    const hash = picture?.hash ?? ''
    hashes.push(hash)
    const small = await findPictureBytes(test.db, hash, 'small')
    expect(small && pictureTypeOf(small)).toBe('image/webp')
  }
  expect(new Set(hashes).size).toBe(3)
  expect(await findPicture(test.db, productId('Wendlemere 20 long'))).toMatchObject({ hash: null, version: 0 })
})

it('what the issued quote expects by the day of its need is what the service expects of it once it has learnt', async () => {
  await learnPrices(test.db, Date.now())
  const bram = { id: PEOPLE[1]?.id ?? '', role: 'advisor' } as const
  const issued = await findRevision(test.db, bram, demo.showcase.quoteId, demo.showcase.revision)
  if (!issued) throw new Error('The showcased quote was issued.')
  const { inputs, builds } = issued
  const ask = { storeIds: [], until: inputs.draft.need.byDate ?? '', weekWaitMinor: inputs.draft.need.weekWaitMinor ?? 0, withTax: true }
  expect(builds.map(({ byDate }) => byDate?.learnedOn)).toEqual([today, today, today])
  for (const { cost, byDate, advice } of builds) {
    const asked = { ...ask, lines: outlookLines(cost) }
    const outlook = outlookView(await loadOutlook(test.db, asked, today, inputs.install, bram.id), asked, today, inputs.install.currency)
    expect(byDate).toEqual(byDateOf(cost, outlook, discountOf(inputs)))
    expect(advice).toEqual(adviceOf(cost, outlook, cheaperElsewhere(inputs)))
  }
})
