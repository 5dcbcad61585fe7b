import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { KINDS } from '../../core/catalog/kinds.ts'
import { ProductInput, StoreInput } from '../../core/catalog/schema.ts'
import { InstallInput } from '../../core/install/schema.ts'
import { addDays, daysBetween } from '../../core/dates.ts'
import { isAccepted } from '../../core/pricing/sighting.ts'
import { SightingInput } from '../../core/pricing/schema.ts'
import { priceViews } from '../../core/pricing/price-views.ts'
import { assembleBuild } from '../../core/quote/assemble.ts'
import { issueFaults } from '../../core/quote/issue-faults.ts'
import { CustomerInput, QuoteDraftSchema } from '../../core/quote/schema.ts'
import { PER_NITROGEN } from '../../core/startup/ammonia-dose.ts'
import { READY_MG_PER_L } from '../../core/startup/ready-reading.ts'
import { CATALOG } from '../../db/demo/catalog.ts'
import { CLUB, CUSTOMERS, PEOPLE } from '../../db/demo/club.ts'
import { demoQuotes } from '../../db/demo/quotes.ts'
import { windowIn } from '../../db/demo/sale-times.ts'
import { DEMO_SEED, seedDemo, type SeededDemo } from '../../db/demo/seed-demo.ts'
import { demoRecord } from '../../db/demo/sightings.ts'
import { STORES } from '../../db/demo/stores.ts'
import { listQuotes } from '../../db/quote-list.ts'
import { findRevision } from '../../db/revisions.ts'
import { findLinkedSetup, listSetups } from '../../db/setups.ts'
import { sightingsOfProducts } from '../../db/sightings.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'

const TODAY = '2026-11-20'
const record = demoRecord(DEMO_SEED, TODAY)
const products = CATALOG.map(({ product }) => product)
const rounded = (share: number): number => Math.round(share * 100) / 100

describe('the catalog', () => {
  it('has at least 120 products, every kind, and at least 8 kits', () => {
    expect(products.length).toBeGreaterThanOrEqual(120)
    expect(new Set(products.map((product) => product.kind))).toEqual(new Set(KINDS))
    expect(products.filter((product) => product.kind === 'kit').length).toBeGreaterThanOrEqual(8)
  })

  it('holds only what a form would accept', () => {
    for (const { id: _id, version: _version, ...fields } of products) {
      expect(ProductInput.safeParse(fields).error?.issues, fields.name).toBeUndefined()
    }
  })

  it('has eight sizes from nano to large in both systems of units', () => {
    const lengths = (maker: string) =>
      products
        .flatMap((product) => (product.kind === 'tank' && product.maker === maker ? [product.spec.lengthMm] : []))
        .toSorted((a, b) => a - b)
    for (const maker of ['Wendlemere', 'Osmere']) {
      expect(new Set(lengths(maker).map((length, index) => `${index} ${length}`)).size).toBe(8)
      expect(lengths(maker)[0]).toBeLessThan(420)
      expect(lengths(maker).at(-1)).toBeGreaterThanOrEqual(1500)
    }
  })

  it('has kits of things it has, cheaper than their parts, and none inside another', () => {
    for (const { product, aboutMinor } of CATALOG.filter((one) => one.product.kind === 'kit')) {
      const parts = product.parts.map((part) => ({ part, found: CATALOG.find((one) => one.product.id === part.productId) }))
      expect(
        parts.every(({ found }) => found !== undefined && found.product.kind !== 'kit'),
        product.name,
      ).toBe(true)
      const sum = parts.reduce((total, { part, found }) => total + (found?.aboutMinor ?? 0) * part.quantity, 0)
      expect(aboutMinor / sum, product.name).toBeGreaterThan(0.6)
      expect(aboutMinor / sum, product.name).toBeLessThan(1)
    }
  })

  it('uses no number that a maker could have', () => {
    const numbers = products.flatMap((product) => product.gtin ?? [])
    expect(numbers.length).toBeGreaterThan(100)
    // GS1 General Specifications: the prefixes 20 to 29 are for restricted circulation (from memory).
    expect(numbers.filter((number) => !/^2\d{12}$/.test(number))).toEqual([])
    expect(new Set(numbers).size).toBe(numbers.length)
  })

  it('leaves some specs open, as makers do', () => {
    const bench = products.find((product) => product.name === 'Thornby Bench 48')
    expect(bench?.kind === 'stand' && bench.spec.ratedLoadKg === undefined).toBe(true)
  })
})

it('club, stores, customers and quotes are what the forms would accept', () => {
  expect(InstallInput.safeParse(CLUB).error).toBeUndefined()
  for (const { store } of STORES) {
    const { id: _id, version: _version, ...fields } = store
    expect(StoreInput.safeParse(fields).error?.issues, store.name).toBeUndefined()
  }
  for (const { id: _id, ...customer } of CUSTOMERS) expect(CustomerInput.safeParse(customer).error?.issues, customer.name).toBeUndefined()
  for (const { draft, key } of demoQuotes(TODAY)) expect(QuoteDraftSchema.safeParse(draft).error?.issues, key).toBeUndefined()
})

it('the words of the quotes are in the units that the club reads', () => {
  for (const { draft } of demoQuotes(TODAY)) {
    const words = [draft.title, draft.need.place, draft.need.livestockNote, draft.note, draft.suggestion?.reason ?? '']
    for (const text of [...words, ...draft.builds.flatMap((build) => [build.name, build.why])])
      expect(text).not.toMatch(/\d\s*(mm|cm|m|L|kg|g|°C)\b/)
    expect(draft.title).toMatch(/^A .*tank.* for /)
    expect(draft.need.place).toMatch(/^(in|on) the [a-z ,]+$/)
  }
})

it('late November begins on the day after the fourth Thursday', () => {
  // Calendar, as in the check values for 2024 to 2030.
  const first = (year: number) => windowIn({ kind: 'late_november', lengthDays: 5 }, year).first
  expect([2024, 2025, 2026, 2030].map(first)).toEqual(['2024-11-29', '2025-11-28', '2026-11-27', '2030-11-29'])
})

describe('the sightings', () => {
  const { sightings, votes } = record

  it('are the same for the same seed and day, and others for another seed', () => {
    expect(demoRecord(DEMO_SEED, TODAY)).toEqual(record)
    expect(demoRecord(DEMO_SEED + 1, TODAY).sightings.map((one) => one.id)).not.toEqual(sightings.map((one) => one.id))
  })

  it('are what a phone would send, from a year and a half, none from the future', () => {
    expect(sightings.length).toBeGreaterThan(2500)
    expect(sightings.length).toBeLessThan(4500)
    for (const one of sightings) {
      const { reporterId, receivedAt, doubt: _d, withdrawn: _w, confirmations: _c, disputes: _p, ...posted } = one
      expect(SightingInput.safeParse(posted).error?.issues).toBeUndefined()
      expect(PEOPLE.some((person) => person.id === reporterId)).toBe(true)
      expect(receivedAt.slice(0, 10)).toBe(one.seenOn)
      expect(one.seenOn < TODAY).toBe(true)
    }
    expect(daysBetween(sightings[0]?.seenOn ?? '', TODAY)).toBeGreaterThan(530)
    expect(new Set(sightings.map((one) => one.id)).size).toBe(sightings.length)
  })

  it('show sales of 10 to 30 % under the printed regular price, and clearances below that', () => {
    const offers = sightings.filter((one) => one.printedRegularMinor !== null && !one.doubt)
    const depths = offers.map((one) => ({ condition: one.condition, depth: 1 - one.priceMinor / (one.printedRegularMinor ?? 1) }))
    const sales = depths.filter((one) => one.condition === 'sale').map((one) => one.depth)
    expect(sales.length).toBeGreaterThan(200)
    // A sticker's rounding moves a small price by some per cent.
    expect(rounded(Math.min(...sales))).toBeGreaterThanOrEqual(0.02)
    expect(rounded(Math.max(...sales))).toBeLessThanOrEqual(0.4)
    expect(sales.filter((depth) => depth >= 0.08 && depth <= 0.32).length / sales.length).toBeGreaterThan(0.9)
    expect(sightings.filter((one) => one.condition === 'clearance').length).toBeGreaterThan(0)
    expect(sightings.filter((one) => one.condition === 'used').length).toBeGreaterThanOrEqual(4)
  })

  it('come thicker at sale times: late November has more sales than the weeks before', () => {
    const sales = (from: string, to: string) =>
      sightings.filter((one) => one.condition === 'sale' && one.seenOn >= from && one.seenOn <= to).length
    expect(sales('2025-11-28', '2025-12-02')).toBeGreaterThan(2 * sales('2025-11-18', '2025-11-22'))
  })

  it('drift upwards: more shelf prices rose than fell', () => {
    const pairs = Map.groupBy(
      sightings.filter((one) => one.condition === 'shelf' && isAccepted(one)),
      (one) => `${one.productId} ${one.storeId}`,
    )
    const moves = [...pairs.values()].map((rows) => Math.sign((rows.at(-1)?.priceMinor ?? 0) - (rows[0]?.priceMinor ?? 0)))
    expect(moves.filter((move) => move > 0).length).toBeGreaterThan(2 * moves.filter((move) => move < 0).length)
    expect(moves.filter((move) => move < 0).length).toBeGreaterThan(0)
  })

  it('hold two slipped decimals, of which no price is made, and votes that the rules allow', () => {
    const slipped = sightings.filter((one) => one.doubt?.code === 'slipped_decimal')
    expect(slipped).toHaveLength(2)
    expect(slipped.some(isAccepted)).toBe(false)
    const [manager] = PEOPLE
    const byId = new Map(sightings.map((one) => [one.id, one]))
    for (const vote of votes) {
      const reporter = byId.get(vote.sightingId)?.reporterId
      expect([reporter, manager?.id]).not.toContain(vote.personId)
      expect(reporter).not.toBe(manager?.id)
    }
    expect(new Set(votes.map((vote) => vote.vote))).toEqual(new Set(['confirm', 'dispute']))
  })
})

it.each(['2026-11-28', '2027-03-01', '2027-07-10', '2028-02-29'])(
  'on %s too all builds have whole totals, the showcased ones at the stores that were asked for, and the slips are plain',
  (today) => {
    const { sightings } = demoRecord(DEMO_SEED, today)
    expect(sightings.filter((one) => one.doubt?.code === 'slipped_decimal')).toHaveLength(2)
    const prices = priceViews(sightings, today)
    const stores = STORES.map(({ store }) => store)
    for (const { draft } of demoQuotes(today)) {
      const inputs = { draft, products, stores, prices, install: CLUB, asOf: today }
      for (const [index, { name }] of draft.builds.entries()) {
        const { full, today, bestSeen, receipts } = assembleBuild(inputs, index).cost
        expect(
          [full, today, bestSeen].map((tier) => tier.complete),
          name,
        ).toEqual([true, true, true])
        const asked = draft.need.storeIds
        if (asked.length > 0) expect(receipts.map(({ storeId }) => storeId).filter((id) => !asked.includes(id))).toEqual([])
      }
    }
  },
)

describe('seeded into a database', () => {
  let test: TestDatabase
  let made: SeededDemo
  const advisor = { id: PEOPLE[1]?.id ?? '', role: 'advisor' } as const
  const options = {
    seed: DEMO_SEED,
    today: TODAY,
    passwords: { member: 'm', advisor: 'a', manager: 'c' },
    hash: async (password: string) => `hash of ${password}`,
  }
  beforeAll(async () => {
    test = await testDatabase()
    made = await seedDemo(test.db, options)
  })
  afterAll(() => test.close())

  it('is all there, and read back as it was made', async () => {
    const ids = products.map((product) => product.id)
    const stored = await sightingsOfProducts(test.db, ids)
    const kept = record.sightings.filter((one) => !one.withdrawn).map((one) => ({ goneOn: null, imported: false, ...one }))
    const inOrder = (rows: typeof stored) => rows.toSorted((a, b) => a.id.localeCompare(b.id))
    expect(inOrder(stored)).toEqual(inOrder(kept))
  })

  it('has quotes in every state, numbered in the order of their issue', async () => {
    const rows = await listQuotes(test.db, advisor)
    expect(Object.fromEntries(rows.map((row) => [row.title, row.state]))).toEqual({
      'A 24 in planted tank for the study': 'lapsed',
      'A tank for the reading room': 'accepted',
      'A large tank for the hall': 'declined',
      'A small shrimp tank for the desk': 'withdrawn',
      'A 36 in planted tank for a cool living room': 'issued',
      'A 75 gallon salt-water tank for the waiting room': 'draft',
      'A 40 gallon tank for two goldfish': 'draft',
    })
    expect(rows.flatMap((row) => row.number ?? []).toSorted()).toEqual([1, 2, 3, 4, 5].map((n) => `2026-000${n}`))
  })

  it('shows three whole builds of about 36 in for a cool room, one of which the engine does not let pass', async () => {
    const document = await findRevision(test.db, advisor, made.showcase.quoteId, made.showcase.revision)
    if (!document) throw new Error('The showcased quote was issued.')
    expect(issueFaults(document.inputs, TODAY)).toEqual([])
    expect(document.conditions.coldestRoomC).toBe(15)
    expect(document.builds.map((build) => build.cost.today.complete)).toEqual([true, true, true])
    expect(document.builds.map((build) => build.rows.filter((row) => row.required && row.answer === 'missing'))).toEqual([[], [], []])
    for (const build of document.builds) expect(Math.abs((build.drawing?.lengthMm ?? 0) - 914)).toBeLessThan(30)
    const [standard, kit] = document.builds
    expect(standard?.suggested).toBe(true)
    expect(standard?.report.counts.does_not_fit).toBe(0)
    expect(kit?.report.findings.find((finding) => finding.check === 'heater_holds')?.verdict).toBe('does_not_fit')
    expect(kit?.report.findings.find((finding) => finding.check === 'stand_load')?.verdict).toBe('not_known')
  })

  it('has a salt-water tank whose builds answer all that is needed, with salt enough for its water', () => {
    const draft = demoQuotes(TODAY).find(({ key }) => key === 'reef')?.draft
    if (!draft) throw new Error('The scenario has a salt-water tank.')
    const inputs = {
      draft,
      products,
      stores: STORES.map(({ store }) => store),
      prices: priceViews(record.sightings, TODAY),
      install: CLUB,
      asOf: TODAY,
    }
    for (const index of draft.builds.keys()) {
      const { rows } = assembleBuild(inputs, index)
      expect(rows.filter((row) => row.required && row.answer === 'missing')).toEqual([])
      expect(rows.find(({ slot }) => slot === 'salt')?.answer).toBe('buy')
    }
    expect(issueFaults(inputs, TODAY)).toEqual([])
  })

  it('shows builds of three prices, fetched from two near stores and one that sends, without a delivery that nobody would pay', async () => {
    const document = await findRevision(test.db, advisor, made.showcase.quoteId, made.showcase.revision)
    const need = document?.inputs.draft.need
    expect(STORES.flatMap(({ store }) => (need?.storeIds.includes(store.id) ? [store.kind] : []))).toEqual(['local', 'local', 'online'])
    const sums = (document?.builds ?? []).flatMap(({ cost }) => (cost.today.complete ? [cost.today] : []))
    const [standard, kit, rimless] = sums.map((sum) => sum.totalMinor) as [number, number, number]
    expect(kit * 1.2).toBeLessThan(standard)
    expect(standard * 1.2).toBeLessThan(rimless)
    expect(standard).toBeLessThan(need?.budgetMinor ?? 0)
    // One surcharge for a tank that is sent is the most that an advisor would let stand.
    for (const sum of sums) expect(sum.deliveryMinor).toBeLessThanOrEqual(4500)
  })

  it('has a setup whose ticks and readings tell one story: dosed, eaten, dosed again, and whether it is ready comes next', async () => {
    const [row] = await listSetups(test.db, advisor)
    const setup = await findLinkedSetup(test.db, row?.id ?? '')
    if (!setup) throw new Error('The accepted quote has a setup.')
    expect(setup.letter).toBe('A')
    const { ticks, readings, plan } = setup
    const ticked = new Map(ticks.map(({ stepId, on }) => [stepId, on]))
    const dayOf = (stepId: string) => ticked.get(stepId) ?? ''
    expect(plan.steps.find((step) => !ticked.has(step.id))?.id).toBe('ready')
    expect([...ticked.values(), ...readings.map(({ takenOn }) => takenOn)].every((day) => day < TODAY)).toBe(true)
    expect(readings[0]?.takenOn.localeCompare(dayOf('first-ammonia'))).toBe(1)
    const again = readings.find(({ takenOn }) => takenOn === dayOf('second-dose'))
    expect(again?.ammoniaMgL).toBeLessThanOrEqual(READY_MG_PER_L)
    expect(readings.at(-1)).toMatchObject({ ammoniaMgL: 0, nitriteMgL: READY_MG_PER_L })
    // Nitrogen is kept: after one dose of 2 mg/L as N, no more nitrogen than that has become nitrite and nitrate.
    for (const { takenOn, ammoniaMgL, nitriteMgL, nitrateMgL } of readings.filter(({ takenOn: day }) => day <= dayOf('second-dose')))
      expect([
        takenOn,
        (ammoniaMgL ?? 0) + (nitriteMgL ?? 0) / PER_NITROGEN.nitrite + (nitrateMgL ?? 0) / PER_NITROGEN.nitrate <= 2,
      ]).toEqual([takenOn, true])
  })

  it('lets no issued quote stand longer than two weeks, nor past a sale of its builds by more than the days that a customer needs', async () => {
    for (const row of await listQuotes(test.db, advisor)) {
      if (row.number === null) continue
      const document = await findRevision(test.db, advisor, row.id, 1)
      if (!document) throw new Error(`${row.number} was issued.`)
      const { issuedOn, standsUntil, builds } = document
      const ends = builds.flatMap((build) => build.cost.lines.flatMap((line) => line.holdsUntil ?? []))
      expect([row.title, daysBetween(issuedOn, standsUntil) <= 14]).toEqual([row.title, true])
      for (const end of ends) expect([row.title, standsUntil <= end || standsUntil === addDays(issuedOn, 5)]).toEqual([row.title, true])
    }
  })

  it('refuses a database that is in use, and changes nothing in it', async () => {
    await expect(seedDemo(test.db, options)).rejects.toThrow('empty database only')
    expect(await listQuotes(test.db, advisor)).toHaveLength(7)
  })
})
