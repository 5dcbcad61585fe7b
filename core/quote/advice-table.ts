import type { Store } from '../catalog/store.ts'
import { sayDate, sayWeekday, yearOf } from '../dates.ts'
import { LEAST_SAVING_MINOR } from '../install.ts'
import { sayMoney } from '../money.ts'
import { RETURN_NOTE, sayReturns, type LineAdvice } from '../pricing/line-advice.ts'
import type { AssembledBuild, RevisionDocument, SlotRow } from './revision.ts'

export interface AdviceRow {
  /** "2 × Torvane 150 W" */
  what: string
  /** "178.00"; empty where none is known. */
  price: string
  /** Why, what must be minded and where it costs less: "About 2 in 3 to find it at $160.00 or less by Dec 20. Bought today it goes back until …" */
  note: string
}

/** Lines of which the same is to be done by the same day. */
export interface AdviceGroup {
  /** "No hurry until Sun, Nov 29" */
  head: string
  /** Why, where all lines have one reason; else empty, and each row says its own. */
  why: string
  rows: AdviceRow[]
}

/** What has a day stands first, and what needs no thought last. */
const ORDER: Record<LineAdvice['advice'], number> = { buy_now: 0, no_hurry: 1, wait: 2, buy_when_convenient: 3 }

/**
 * What was frozen of a build's advice as a table: what is to be bought now, what has until when, what waits for which price. Empty where nothing was
 * asked for or known.
 *
 * @example adviceTable(build, 'USD', 2026)[0] // { head: 'Buy now', why: '', rows: [{ what: 'Tern 4 canister', price: '178.00', note: '' }] }
 */
export function adviceTable(
  { advice = [], rows }: Pick<AssembledBuild, 'advice' | 'rows'>,
  currency: string,
  thisYear: number,
): AdviceGroup[] {
  const sorted = advice.toSorted((a, b) => ORDER[a.advice] - ORDER[b.advice] || ((a.by ?? '') < (b.by ?? '') ? -1 : 1))
  const groups = Map.groupBy(sorted, (line) => headOf(line, thisYear))
  return [...groups].map(([head, lines]) => {
    const why = sharedReason(lines)
    return {
      head,
      why,
      rows: lines.flatMap((line) => {
        const row = rows.find(({ lineId, answer }) => lineId === line.lineId && answer !== 'in_kit')
        if (!row) return []
        const price = line.tagMinor === null ? '' : sayMoney(line.tagMinor, currency, { symbol: false })
        return [{ what: row.text, price, note: noteOf(why === '' ? line : { ...line, reason: '' }, row, currency) }]
      }),
    }
  })
}

function sharedReason(lines: readonly LineAdvice[]): string {
  const [reason, ...others] = new Set(lines.map((line) => line.reason ?? ''))
  return lines.length < 2 || others.length > 0 ? '' : (reason ?? '')
}

function headOf({ advice, tagMinor, by }: LineAdvice, thisYear: number): string {
  if (tagMinor === null || by === null) return 'No price known'
  switch (advice) {
    case 'buy_now':
      return 'Buy now'
    case 'no_hurry':
      return `No hurry until ${sayWeekday(by, thisYear)}`
    case 'buy_when_convenient':
      return `Buy when convenient, by ${sayDate(by, thisYear)}`
    case 'wait':
      return `Wait, and buy at this price or under; by ${sayDate(by, thisYear)} at the latest`
  }
}

/** What water stands in, or on: whether it leaks is seen before the store's return days are over, or too late. */
export const holdsWater = ({ kind }: Pick<SlotRow, 'kind'>): boolean => kind === 'tank' || kind === 'stand' || kind === 'kit'

function noteOf(line: LineAdvice, row: SlotRow, currency: string): string {
  const why = line.reason ?? chanceWithTax(line, row, currency)
  return [why, line.elsewhere ?? '', sayReturns(line, holdsWater(row))].filter((sentence) => sentence !== '').join(' ')
}

/** As it was told before reasons were. */
function chanceWithTax({ advice, likely }: LineAdvice, row: SlotRow, currency: string): string {
  if (advice !== 'wait' || !likely) return ''
  const all = row.quantity > 1 ? ` for all ${row.quantity}` : ''
  return `about ${likely.many} in ${likely.of} to pay ${sayMoney(likely.paidMinor, currency, { symbol: false })} or less with tax${all}`
}

/** Column of the prices in every table: a shopper holds it against the tag, whatever of the tax that shows. */
export const tagHead = (currency: string): string => `Buy at, on the tag (${currency})`

/** What tags of the stores where lines are bought say of tax. */
function tagTax(builds: readonly AssembledBuild[], stores: readonly Store[]): string {
  const used = new Set(builds.flatMap(({ cost }) => cost.lines.map(({ storeId }) => storeId)))
  const [included, ...others] = new Set(stores.filter(({ id }) => used.has(id)).map(({ pricesIncludeTax }) => pricesIncludeTax))
  if (included === undefined) return ''
  if (others.length > 0) return ': tax is in them where the store prints it so, else it is added at the till'
  return included ? ', tax in them' : ': tax is added at the till'
}

/** What the tables rest on, said once beside them; empty where no build has one. */
export function adviceNotes({
  builds,
  need,
  inputs: { install, asOf, stores },
}: Pick<RevisionDocument, 'builds' | 'need' | 'inputs'>): string[] {
  const advice = builds.flatMap((build) => build.advice ?? [])
  if (advice.length === 0) return []
  const money = (minor: number): string => sayMoney(minor, install.currency)
  const wait = need.weekWaitMinor
    ? `A week’s wait is counted as ${money(need.weekWaitMinor)}.`
    : 'Waiting is taken to cost nothing, so that only the day ends it.'
  const least = install.leastSavingMinor ?? LEAST_SAVING_MINOR
  const returned = builds.some(({ cost }) => cost.lines.some(({ returnDays }) => (returnDays ?? 0) > 0))
  return [
    `Expected on ${sayDate(asOf, yearOf(asOf))} from what members reported; no promise. Prices are those on the tag, of one${tagTax(builds, stores)}.`,
    `${wait} Nothing is waited for that saves less than ${least > 0 ? `${money(least)} or ` : ''}3 %.`,
    ...(returned ? [RETURN_NOTE] : []),
  ]
}
