import type { Transaction } from 'kysely'
import { addDays, type CivilDate } from '../../core/dates.ts'
import type { Sighting } from '../../core/pricing/sighting.ts'
import type { NewWatch } from '../../core/pricing/watches/watch.ts'
import { uuidV7 } from '../../core/uuid-v7.ts'
import type { Database } from '../database.ts'
import { createWatch } from '../watches.ts'
import { CATALOG } from './catalog.ts'
import { CLUB, PEOPLE } from './club.ts'
import type { DemoRecord } from './sightings.ts'

/** A sale that was seen so lately still runs, whatever its tag said. */
const LATELY_DAYS = 4
/** Above what the tag shows with any tax of the scenario's stores, in whole units of money. */
const WITH_TAX = 1.08
const HEATER_LIMIT_MINOR = 3000

const TERMS = { byDay: null, conditions: ['new', 'clearance'], regionId: null, storeIds: [] } satisfies Partial<NewWatch>

/** What the member waits for: something that is on sale now, which is told as soon as the service looks, and any strong heater. */
export async function seedWatches(trx: Transaction<Database>, { sightings }: DemoRecord, today: CivilDate, now: Date): Promise<void> {
  const member = PEOPLE.find(({ role }) => role === 'member')
  if (!member) throw new Error('The scenario has a member.')
  const sale = sightings.findLast(
    (sighting, index) => isOnSale(sighting, today) && sighting.reporterId !== member.id && !isOver(sighting, sightings.slice(index + 1)),
  )
  const products = sale ? [{ productId: sale.productId, limitMinor: Math.ceil((sale.priceMinor * WITH_TAX) / 100) * 100 }] : []
  const watches: NewWatch[] = [
    ...products.map((of, index) => ({ ...TERMS, ...of, id: idOf(now, index), requirement: null })),
    {
      ...TERMS,
      id: idOf(now, 9),
      productId: null,
      limitMinor: HEATER_LIMIT_MINOR,
      requirement: { kind: 'heater', spec: 'powerW:200..', fits: null },
    },
  ]
  for (const watch of watches) {
    const made = await createWatch(trx, { id: member.id, role: 'member' }, watch, CLUB.currency)
    if (!made.ok) throw new Error(`The scenario's watch is refused: ${made.refusal.message}`)
  }
}

const idOf = (now: Date, index: number): string => uuidV7(now.getTime(), new Uint8Array(10).fill(index))

/** Somebody saw another price there since. */
const isOver = ({ productId, storeId }: Sighting, later: readonly Sighting[]): boolean =>
  later.some((one) => one.productId === productId && one.storeId === storeId)

function isOnSale({ condition, seenOn, lastDay, withdrawn, doubt, productId }: Sighting, today: CivilDate): boolean {
  const kind = CATALOG.find(({ product }) => product.id === productId)?.product.kind
  if (lastDay !== null && lastDay < today) return false
  return (
    condition === 'sale' &&
    kind !== 'livestock' &&
    kind !== 'plant' &&
    !withdrawn &&
    doubt === null &&
    seenOn >= addDays(today, -LATELY_DAYS)
  )
}
