import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Notice } from '../../core/pricing/watches/notice.ts'
import { phoneId, product, store } from '../support/rows.ts'
import { today } from './support/quotes.ts'
import { lookNow, setWatch, toldTo } from './support/watches.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

/** Forty heaters that somebody saw at once, the dearest first, as an import brings them. */
const HOW_MANY = 40
const priceOf = (place: number): number => 2000 + HOW_MANY - place

let world: World
let clock: () => number
beforeAll(async () => {
  world = await createWorld()
  clock = world.deps.clock
})
afterAll(() => world.close())

async function importMany(): Promise<void> {
  const [reporter, at] = [await world.signIn('member'), await store(world.db)]
  const ids: string[] = []
  for (let made = 0; made < HOW_MANY; made += 1) ids.push((await product(world.db)).id)
  for (const [place, productId] of ids.entries())
    await world.db
      .insertInto('sighting')
      .values({
        id: phoneId(),
        product_id: productId,
        store_id: at.id,
        condition: 'shelf',
        price_minor: priceOf(place),
        seen_on: today(),
        evidence: 'tag',
        reporter_id: reporter.personId,
      })
      .execute()
}
const dayLater = (days: number) => world.rebuild({ clock: () => clock() + days * 86_400_000 })
const namesOf = (told: readonly Notice[]): string[] => told.map(({ watchId, productId }) => `${watchId} ${productId}`)
const anyHeater = (who: Browser) => setWatch(who, { requirement: { kind: 'heater' } })

it('of many deals at once a watch tells the twenty cheapest on a day, the rest on the next, each once', async () => {
  const [one, many] = [await world.signIn('member'), await world.signIn('member')]
  await anyHeater(one)
  for (let made = 0; made < 6; made += 1) await anyHeater(many)
  await lookNow(world)
  await importMany()
  await lookNow(world)
  const cheapest = Array.from({ length: HOW_MANY }, (_, place) => 2001 + place)
  const pricesTold = async () => (await toldTo(one)).map(({ priceMinor }) => priceMinor).toSorted((a, b) => a - b)
  expect(await pricesTold()).toEqual(cheapest.slice(0, 20))
  // Six watches that are alike would tell 120.
  expect(await toldTo(many)).toHaveLength(100)
  expect(await lookNow(world), 'nothing more on that day').toBe(0)
  dayLater(1)
  await lookNow(world)
  expect(await pricesTold()).toEqual(cheapest)
  expect(new Set(namesOf(await toldTo(many))).size).toBe(200)
  dayLater(2)
  await lookNow(world)
  expect(await pricesTold(), 'each once').toEqual(cheapest)
  dayLater(3)
  await lookNow(world)
  const rows = await world.db.selectFrom('notice').select('id').where('person_id', '=', many.personId).execute()
  expect(rows, 'six times forty, none lost').toHaveLength(240)
})
