import { LONGEST_GAP, STAGES, STATES, type SaleTables } from './gap-tables.ts'
import type { AwayStep, EndStep, ReportStep, SaleStep, SaleSteps, WindowStep } from './sale-steps.ts'

/** Chance that a report on a day of a sale tells the regular price all the same. */
const MISREPORT = 0.02

/**
 * What is believed of the state after a stretch of the record, and how likely the stretch was.
 * `state[0]` is regular, the others the stages of a sale; they add up to 1 with `inWindow`, the share that stands in an open window's sale.
 */
export interface Filtered {
  logLikelihood: number
  state: Float64Array
  inWindow: number
}

/** Chance that the product takes part in a window, before anything is known of its days. */
export type TakesPart = (step: WindowStep) => number

/** One chance for each window of the steps, in their order. */
export const partsOf = ({ steps }: SaleSteps, takesPart: TakesPart): number[] =>
  steps.filter((step) => step.what === 'window').map((step) => takesPart(step))

/** Told for each window: ln of the likelihood ratio, part against no part, the next report behind it included. */
export type TellWindow = (step: WindowStep, logRatio: number) => void

/**
 * The forward algorithm over the gaps between reports, rescaled at each (design rule 3). The likelihood leaves out what does not depend on
 * start chance, silence and length: see `reportingLikelihood`.
 *
 * `parts` as of `partsOf`.
 */
export function filterSales({ startsOnSale, steps }: SaleSteps, tables: SaleTables, parts: readonly number[], tell?: TellWindow): Filtered {
  const { table, silence } = tables
  const state = firstState(startsOnSale)
  let scale = 1
  let logLikelihood = 0
  let inWindow = 0
  let windows = 0
  for (let index = 0; index < steps.length; index += 1) {
    const step = steps[index] as SaleStep
    let likelihood: number
    if (step.what === 'window') {
      const ways = window(state, step, table, silence, parts[windows] ?? 0)
      if (tell) tell(step, logRatioOf(ways, step, steps[index + 1], table, silence))
      inWindow = step.open ? ways.part : 0
      likelihood = ways.likelihood
      windows += 1
    } else if (step.what === 'away') likelihood = away(state, step, tables)
    else likelihood = onwards(state, step, table, silence)
    scale *= likelihood
    // Far above the least number there is, so that no product of a few more can reach it.
    if (scale < 1e-200) {
      logLikelihood += Math.log(scale)
      scale = 1
    }
  }
  return { logLikelihood: logLikelihood + Math.log(scale), state, inWindow }
}

/** A first report of a sale may have come at any of its stages. */
function firstState(onSale: boolean): Float64Array {
  const state = new Float64Array(STATES)
  if (onSale) state.fill(1 / STAGES, 1)
  else state[0] = 1
  return state
}

/** To the next report, or to the record's end; leaves a state that adds up to 1 and tells how likely it was. */
function onwards(state: Float64Array, step: ReportStep | EndStep, table: Float64Array, silence: number): number {
  if (step.what === 'regular' && state[0] === 1 && step.gap <= LONGEST_GAP) return table[(step.gap - 1) * STATES * STATES] as number
  acrossGap(state, step.gap, table, silence, step.what === 'end')
  if (step.what === 'sale') state[0] = 0
  else if (step.what === 'regular') clearSale(state)
  return rescale(state, 0)
}

/** Over days on which nobody looked. */
function away(state: Float64Array, step: AwayStep, { table, silence, unwatched }: SaleTables): number {
  acrossGap(state, step.gap, table, silence, true)
  acrossGap(state, step.days, unwatched, 1, false)
  return rescale(state, 0)
}

function rescale(state: Float64Array, beside: number): number {
  const sum = sumOf(state) + beside
  for (let place = 0; place < STATES; place += 1) state[place] = (state[place] as number) / sum
  return sum
}

/** A regular report: no sale runs. */
function clearSale(state: Float64Array): void {
  for (let place = 1; place < STATES; place += 1) state[place] = 0
}

const sumOf = (state: Float64Array): number =>
  (state[0] as number) + (state[1] as number) + (state[2] as number) + (state[3] as number) + (state[4] as number)

/** Over so many days, those between silent; with `silentToo` the last one as well. Changes the state. */
function acrossGap(state: Float64Array, gap: number, table: Float64Array, silence: number, silentToo: boolean): void {
  let left = gap
  while (left > 0) {
    const days = left < LONGEST_GAP ? left : LONGEST_GAP
    times(state, table, (days - 1) * STATES * STATES)
    left -= days
    if (left > 0 || silentToo) for (let place = 1; place < STATES; place += 1) state[place] = (state[place] as number) * silence
  }
}

/** State times a matrix of the table, written out: it runs a hundred million times over a region's record. */
function times(state: Float64Array, table: Float64Array, base: number): void {
  const regular = state[0] as number
  const first = state[1] as number
  const second = state[2] as number
  const third = state[3] as number
  const fourth = state[4] as number
  const onSale = first !== 0 || second !== 0 || third !== 0 || fourth !== 0
  for (let to = 0; to < STATES; to += 1) {
    const at = base + to
    let sum = regular * (table[at] as number)
    if (onSale) {
      sum += first * (table[at + STATES] as number)
      sum += second * (table[at + 2 * STATES] as number)
      sum += third * (table[at + 3 * STATES] as number)
      sum += fourth * (table[at + 4 * STATES] as number)
    }
    state[to] = sum
  }
}

interface Ways {
  likelihood: number
  /** Share of those that stand in its sale. */
  part: number
  /** Both ways apart, before they are weighed: likelihood of its days with part, and state without. */
  withPart: number
  without: Float64Array
}

/** Through a window, with part and without; leaves the state of its last day, where a part is over behind it unless it is open. */
function window(state: Float64Array, step: WindowStep, table: Float64Array, silence: number, part: number): Ways {
  acrossGap(state, step.gap, table, silence, true)
  const eve = rescale(state, 0)
  throughWindow(state, step, table, silence)
  const without = state.slice()
  const withPart = partLikelihood(step, silence)
  for (let place = 0; place < STATES; place += 1) state[place] = (state[place] as number) * (1 - part)
  if (!step.open) state[0] = (state[0] as number) + part * withPart
  const beside = step.open ? part * withPart : 0
  const sum = rescale(state, beside)
  return { likelihood: eve * sum, part: beside / sum, withPart, without }
}

/** The days of a window for a product that takes no part: an ordinary sale may run all the same. */
function throughWindow(state: Float64Array, { days, inside }: WindowStep, table: Float64Array, silence: number): void {
  let reached = 0
  for (const { at, onSale } of inside) {
    acrossGap(state, at - reached, table, silence, false)
    if (onSale) state[0] = 0
    else clearSale(state)
    reached = at
  }
  if (reached < days) acrossGap(state, days - reached, table, silence, true)
}

/** The days of a window for a product that is on sale on all of them. */
const partLikelihood = ({ days, inside }: WindowStep, silence: number): number =>
  silence ** (days - inside.length) * MISREPORT ** inside.filter(({ onSale }) => !onSale).length

function logRatioOf(
  { withPart, without }: Ways,
  step: WindowStep,
  next: SaleStep | undefined,
  table: Float64Array,
  silence: number,
): number {
  if (step.open || next === undefined || next.what === 'window' || next.what === 'away') return Math.log(withPart / sumOf(without))
  const regular = firstState(false)
  regular[0] = withPart
  const after = (state: Float64Array): number => {
    acrossGap(state, next.gap, table, silence, next.what === 'end')
    const onSale = sumOf(state) - (state[0] as number)
    return next.what === 'end' ? sumOf(state) : next.what === 'sale' ? onSale : (state[0] as number)
  }
  return Math.log(after(regular) / after(without))
}

/**
 * ln of the part of the likelihood that depends on how often a product is reported: silent days, regular reports, sale reports, and sale reports
 * that may be echoes of one before.
 *
 * `regularChance` is the chance of a report on a regular day, `echo` that of an echo; on a sale day a report comes with 1 − silence × (1 − the first).
 */
export function reportingLikelihood(
  { days, regularDays, saleDays, echoes }: Pick<SaleSteps, 'days' | 'regularDays' | 'saleDays' | 'echoes'>,
  { regularChance, echo }: { regularChance: number; echo: number },
  silence: number,
): number {
  const silentDays = days - regularDays - saleDays
  const silentOnSale = silence * (1 - regularChance)
  return (
    silentDays * Math.log1p(-regularChance) +
    regularDays * Math.log(regularChance) +
    (saleDays - echoes.sale) * Math.log1p(-silentOnSale) +
    echoes.sale * Math.log1p(-silentOnSale * (1 - echo))
  )
}
