import { CHECK_TITLES } from '../sizing/check-titles.ts'
import { SLOT_NAMES, SLOTS, type Slot } from '../catalog/kinds.ts'
import type { Store } from '../catalog/store.ts'
import { sayDate } from '../dates.ts'
import { sayMoney } from '../money.ts'
import { sayByDate, type ByDate } from '../pricing/by-date.ts'
import type { LineCost } from '../pricing/tiers.ts'
import { VERDICT_WORDS } from '../sizing/finding.ts'
import type { SlotRow, WorkedBuild } from './revision.ts'

/** One thing that is otherwise than it was, in words; "nothing" where there was none or is none now. */
export interface BuildChange {
  part: 'build' | 'line' | 'price' | 'total' | 'expected' | 'check'
  /** "Heat", "Torvane 100 W", "Total today", "Heater stuck on". */
  what: string
  was: string
  now: string
}

export interface ComparedBuild {
  /** The letter it has now; of one that is gone, the letter it had. */
  letter: string
  name: string
  changes: BuildChange[]
}

/** A build whose `byDate` is not known yet says nothing of what is expected. */
type Priced = Pick<WorkedBuild, 'id' | 'letter' | 'name' | 'rows' | 'cost' | 'report' | 'byDate'>

export interface Said {
  currency: string
  stores: readonly Pick<Store, 'id' | 'name'>[]
  thisYear: number
}

/** What stands where there was none, or is none now. */
export const NOTHING = 'nothing'

/**
 * What became of each build between two versions: lines, counts, prices, totals, what is expected by the day of the need, verdicts. Builds are the same by their id, so that one which moved to
 * another letter is not told as new. A price is compared where the same product stands in both; a check where its verdict is another.
 *
 * @example compareBuilds(version1.builds, version2.builds, said)[0] // { letter: 'A', name: 'Long and deep', changes: [{ part: 'line', what: 'Heat', was: '2 × Torvane 150 W', now: '2 × Torvane 100 W' }, …] }
 */
export function compareBuilds(before: readonly Priced[], after: readonly Priced[], said: Said): ComparedBuild[] {
  const gone = before.filter((build) => !after.some((one) => one.id === build.id))
  return [
    ...after.map((now) => {
      const was = before.find((one) => one.id === now.id)
      return { letter: now.letter, name: now.name, changes: was ? changesOf(was, now, said) : newBuild(now, said) }
    }),
    ...gone.map((was) => ({ letter: was.letter, name: was.name, changes: [goneBuild(was, said)] })),
  ]
}

const newBuild = (build: Priced, said: Said): BuildChange[] => [
  { part: 'build', what: 'The whole build', was: NOTHING, now: 'is new' },
  { part: 'total', what: 'Total today', was: NOTHING, now: sayTotal(build, said) },
]
const goneBuild = (build: Priced, said: Said): BuildChange => ({
  part: 'build',
  what: 'The whole build',
  was: sayTotal(build, said),
  now: 'was taken out',
})

function changesOf(was: Priced, now: Priced, said: Said): BuildChange[] {
  const named: BuildChange[] = was.letter === now.letter ? [] : [{ part: 'build', what: 'Letter', was: was.letter, now: now.letter }]
  return [
    ...named,
    ...lineChanges(was, now),
    ...priceChanges(was, now, said),
    ...totalChange(was, now, said),
    ...expectedChange(was, now, said),
    ...checkChanges(was, now),
  ]
}

/** What the build itself answers: a kit's parts are told with the kit, an empty slot is told by what was in it. */
const answers = ({ rows }: Priced, slot: Slot): string[] =>
  rows.filter((row) => row.slot === slot && row.lineId !== null && row.answer !== 'in_kit').map(sayRow)

const sayRow = (row: SlotRow): string =>
  row.answer === 'owned' ? `${row.text}, already owned` : row.answer === 'not_needed' ? `not needed: ${row.text}` : row.text

function lineChanges(was: Priced, now: Priced): BuildChange[] {
  return SLOTS.flatMap((slot): BuildChange[] => {
    const [left, right] = [answers(was, slot), answers(now, slot)]
    const [before, after] = [left.filter((one) => !right.includes(one)), right.filter((one) => !left.includes(one))]
    if (before.length === 0 && after.length === 0) return []
    return [{ part: 'line', what: SLOT_NAMES[slot], was: before.join(', ') || NOTHING, now: after.join(', ') || NOTHING }]
  })
}

function priceChanges(was: Priced, now: Priced, said: Said): BuildChange[] {
  const told = new Set<string>()
  return now.cost.lines.flatMap((line): BuildChange[] => {
    const old = was.cost.lines.find((one) => one.productId === line.productId)
    if (!old || told.has(line.productId)) return []
    told.add(line.productId)
    const [before, after] = [sayPrice(old, said), sayPrice(line, said)]
    return before === after ? [] : [{ part: 'price', what: nameOf(line, now), was: before, now: after }]
  })
}

const nameOf = (line: LineCost, build: Priced): string =>
  (build.rows.find((row) => row.lineId === line.lineId && row.answer !== 'in_kit')?.text ?? 'a product').replace(/^\d+ × /, '')

function sayPrice({ unitTodayMinor, storeId }: LineCost, { currency, stores }: Said): string {
  if (unitTodayMinor === null) return 'no price'
  const store = stores.find((one) => one.id === storeId)?.name
  return [sayMoney(unitTodayMinor, currency), store].filter(Boolean).join(', ')
}

const sayTotal = ({ cost: { today } }: Priced, { currency }: Said): string =>
  today.complete ? sayMoney(today.totalMinor, currency) : 'no total'

function totalChange(was: Priced, now: Priced, said: Said): BuildChange[] {
  const [before, after] = [was.cost.today, now.cost.today]
  if (sayTotal(was, said) === sayTotal(now, said)) return []
  const difference = before.complete && after.complete ? after.totalMinor - before.totalMinor : null
  const by = difference === null ? '' : `, ${sayMoney(Math.abs(difference), said.currency)} ${difference < 0 ? 'less' : 'more'}`
  return [{ part: 'total', what: 'Total today', was: sayTotal(was, said), now: `${sayTotal(now, said)}${by}` }]
}

/** Each with the day of the record that it was learnt from: where today's prices stand still, what was learnt since is why it moved. */
function expectedChange(was: Priced, now: Priced, said: Said): BuildChange[] {
  if (was.byDate === undefined || now.byDate === undefined) return []
  const [before, after] = [sayExpected(was.byDate, said), sayExpected(now.byDate, said)]
  if (before === after) return []
  const learntSince = was.byDate !== null && now.byDate !== null && was.byDate.learnedOn !== now.byDate.learnedOn
  const from = (byDate: ByDate | null): string =>
    byDate && learntSince ? `; from what the record had taught by ${sayDate(byDate.learnedOn, said.thisYear)}` : ''
  return [{ part: 'expected', what: 'Expected total', was: `${before}${from(was.byDate)}`, now: `${after}${from(now.byDate)}` }]
}

/** @example 'about $815 by Dec 20, $783 to $839 in 8 of 10 cases' */
function sayExpected(byDate: ByDate | null, { currency, thisYear }: Said): string {
  if (!byDate) return NOTHING
  const { figure, range } = sayByDate(byDate, currency, thisYear)
  return `${figure} by ${sayDate(byDate.until, thisYear)}, ${range}`
}

function checkChanges(was: Priced, now: Priced): BuildChange[] {
  const checks = new Map([...was.report.findings, ...now.report.findings].map((finding) => [finding.check, CHECK_TITLES[finding.check]]))
  return [...checks].flatMap(([check, title]): BuildChange[] => {
    const say = ({ report }: Priced): string => {
      const finding = report.findings.find((one) => one.check === check)
      return finding ? (finding.wording ?? VERDICT_WORDS[finding.verdict]) : 'not checked'
    }
    const [before, after] = [say(was), say(now)]
    return before === after ? [] : [{ part: 'check', what: title, was: before, now: after }]
  })
}
