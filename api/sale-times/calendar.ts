import type { Kysely } from 'kysely'
import type { Store } from '../../core/catalog/store.ts'
import { addDays, type CivilDate } from '../../core/dates.ts'
import type { SaleCalendarRow, SaleDays, SaleTime } from '../../core/pricing/sale-time.ts'
import type { Database } from '../../db/database.ts'
import { firstSeenOn, readSaleRuns, sinceFor, type AskedRun } from '../../db/sale-record.ts'
import { listSaleTimes } from '../../db/sale-times.ts'
import { listStores } from '../../db/stores.ts'
import { runsAt } from './first-days.ts'

/** Days ahead that the calendar shows, the present one counted. */
const YEAR_DAYS = 366
/** More past runs than these say nothing that the last ones do not. */
const MOST_PAST = 12

type Run = SaleDays & { storeIds: string[] }

/** Stores where a sale time happens: those it names, else every one that is not archived. */
export const storesOf = ({ storeIds }: Pick<SaleTime, 'storeIds'>, stores: readonly Store[]): Store[] =>
  stores.filter((store) => !store.archived && (storeIds.length === 0 || storeIds.includes(store.id)))

/** The coming year's sale times with what the record says of the past ones. In the order of their next run; those that do not come last. */
export async function saleCalendar(db: Kysely<Database>, today: CivilDate): Promise<SaleCalendarRow[]> {
  const [times, stores, first] = await Promise.all([listSaleTimes(db), listStores(db, { archived: false }), firstSeenOn(db)])
  const since = first === null ? null : sinceFor(today, first)
  const planned = times.map((saleTime) => ({ saleTime, ...runsOfTime(saleTime, stores, today, since) }))
  const asked = planned.flatMap(({ saleTime, past }) => past.map((run): AskedRun => ({ ...run, key: keyOf(saleTime, run) })))
  const found = await readSaleRuns(db, asked)
  return planned
    .map(({ saleTime, coming, past }) => ({
      saleTime,
      coming,
      past: past.map((run) => {
        const { first: from, last } = run
        return found.get(keyOf(saleTime, run)) ?? { first: from, last, stores: 0, products: 0, sightings: 0, medianDepth: null }
      }),
    }))
    .toSorted((a, b) => (a.coming[0]?.first ?? '9').localeCompare(b.coming[0]?.first ?? '9'))
}

const keyOf = ({ id }: SaleTime, { first }: SaleDays): string => `${id} ${first}`

function runsOfTime(
  saleTime: SaleTime,
  stores: readonly Store[],
  today: CivilDate,
  since: CivilDate | null,
): { coming: Run[]; past: Run[] } {
  const coming = comingRuns(saleTime, stores, today)
  if (since === null) return { coming, past: [] }
  const past = runsBetween(saleTime, stores, since, today).filter(({ first, last }) => last < today && first >= since)
  return { coming, past: past.toReversed().slice(0, MOST_PAST) }
}

/** Runs of the coming year of a sale time that may not be stored yet. */
export const comingRuns = (fields: Omit<SaleTime, 'id' | 'version'>, stores: readonly Store[], today: CivilDate): Run[] =>
  runsBetween(fields, stores, today, addDays(today, YEAR_DAYS - 1))

/** Runs of a sale time at its stores that touch the days from `from` to `to`, both inclusive. */
export const runsBetween = (fields: Omit<SaleTime, 'id' | 'version'>, stores: readonly Store[], from: CivilDate, to: CivilDate): Run[] =>
  joined(fields, storesOf(fields, stores), from, to)

/** The same days at several stores are one run. A calendar is asked once for all stores of a place. */
function joined(
  { when, lengthDays }: Pick<SaleTime, 'when' | 'lengthDays'>,
  stores: readonly Store[],
  from: CivilDate,
  to: CivilDate,
): Run[] {
  const places = Map.groupBy(stores, ({ country, subdivision }) => (when.kind === 'holiday' ? `${country} ${subdivision ?? ''}` : ''))
  const found = [...places.values()].flatMap((ofPlace) =>
    runsAt({ when, lengthDays }, ofPlace[0] as Store, from, to).map((run) => ({ ...run, storeIds: ofPlace.map(({ id }) => id) })),
  )
  return [...Map.groupBy(found, ({ first }) => first).values()]
    .map(([run, ...same]) => ({ ...(run as Run), storeIds: [run as Run, ...same].flatMap(({ storeIds }) => storeIds) }))
    .toSorted((a, b) => a.first.localeCompare(b.first))
}
