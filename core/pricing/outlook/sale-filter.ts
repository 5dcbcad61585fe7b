import { LONGEST_GAP, STATES } from './gap-tables.ts'
import type { SaleSteps, WindowStep } from './sale-steps.ts'

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

/** Both ways through a window: likelihood of all that follows its eve up to its last day. */
export interface WindowWays {
  step: WindowStep
  /** ln of the likelihood ratio, part against no part, the next report behind it included. */
  logRatio: number
}

/**
 * The forward algorithm over the gaps between reports, rescaled at each (design rule 3). The likelihood leaves out what does not depend on
 * start chance, silence and length: see `reportingLikelihood`.
 *
 * `table` is the gap table of these parameters and `silence` theirs.
 */
export function filterSales(
  steps: SaleSteps,
  table: Float64Array,
  silence: number,
  takesPart: TakesPart,
  tell?: (ways: WindowWays) => void,
): Filtered {
  let state = firstState(steps.startsOnSale)
  let logLikelihood = 0
  let inWindow = 0
  steps.steps.forEach((step, index) => {
    state = acrossGap(state, step.gap, table, silence, step.what === 'end' || step.what === 'window')
    if (step.what === 'window') {
      const without = throughWindow(state, step, table, silence)
      const withPart = partLikelihood(step, silence)
      if (tell) tell({ step, logRatio: logRatioOf(withPart, without, step, steps.steps[index + 1], table, silence) })
      const part = takesPart(step)
      inWindow = step.open ? part * withPart : 0
      state = without.map((chance) => chance * (1 - part))
      if (!step.open) state[0] = (state[0] as number) + part * withPart
    } else if (step.what === 'regular') state.fill(0, 1)
    else if (step.what === 'sale') state[0] = 0
    const sum = state.reduce((all, chance) => all + chance, inWindow)
    logLikelihood += Math.log(sum)
    for (let place = 0; place < STATES; place += 1) state[place] = (state[place] as number) / sum
    inWindow /= sum
  })
  return { logLikelihood, state, inWindow }
}

/** A first report of a sale may have come at any of its stages. */
const firstState = (onSale: boolean): Float64Array =>
  Float64Array.from({ length: STATES }, (_, place) => (place === 0 ? Number(!onSale) : Number(onSale) / (STATES - 1)))

/** Over so many days, those between silent; with `silentToo` the last one as well. */
function acrossGap(state: Float64Array, gap: number, table: Float64Array, silence: number, silentToo: boolean): Float64Array {
  let left = gap
  let now = state
  while (left > 0) {
    const days = Math.min(left, LONGEST_GAP)
    now = times(now, table, days)
    left -= days
    if (left > 0 || silentToo) for (let place = 1; place < STATES; place += 1) now[place] = (now[place] as number) * silence
  }
  return now
}

function times(state: Float64Array, table: Float64Array, days: number): Float64Array {
  const into = new Float64Array(STATES)
  const base = (days - 1) * STATES * STATES
  for (let from = 0; from < STATES; from += 1) {
    const chance = state[from] as number
    if (chance === 0) continue
    for (let to = 0; to < STATES; to += 1) into[to] = (into[to] as number) + chance * (table[base + from * STATES + to] as number)
  }
  return into
}

/** The days of a window for a product that takes no part: an ordinary sale may run all the same. */
function throughWindow(eve: Float64Array, { days, inside }: WindowStep, table: Float64Array, silence: number): Float64Array {
  let state = eve
  let reached = 0
  for (const { at, onSale } of inside) {
    state = acrossGap(state, at - reached, table, silence, false)
    if (onSale) state[0] = 0
    else state.fill(0, 1)
    reached = at
  }
  return reached < days ? acrossGap(state, days - reached, table, silence, true) : Float64Array.from(state)
}

/** The days of a window for a product that is on sale on all of them. */
const partLikelihood = ({ days, inside }: WindowStep, silence: number): number =>
  silence ** (days - inside.length) * MISREPORT ** inside.filter(({ onSale }) => !onSale).length

function logRatioOf(
  withPart: number,
  without: Float64Array,
  step: WindowStep,
  next: SaleSteps['steps'][number] | undefined,
  table: Float64Array,
  silence: number,
): number {
  const sum = (state: Float64Array, onSale: boolean | null): number =>
    state.reduce((all, chance, place) => all + (onSale === null || onSale === place > 0 ? chance : 0), 0)
  if (step.open || next === undefined || next.what === 'window') return Math.log(withPart / sum(without, null))
  const told = next.what === 'end' ? null : next.what === 'sale'
  const after = (state: Float64Array): number => sum(acrossGap(state, next.gap, table, silence, told === null), told)
  const regular = firstState(false)
  regular[0] = withPart
  return Math.log(after(regular) / after(without))
}

/**
 * ln of the part of the likelihood that depends on how often a product is reported: silent days, regular reports, sale reports.
 *
 * `regularChance` is the chance of a report on a regular day; on a sale day it is 1 − silence × (1 − that).
 */
export function reportingLikelihood(
  { days, regularDays, saleDays }: Pick<SaleSteps, 'days' | 'regularDays' | 'saleDays'>,
  regularChance: number,
  silence: number,
): number {
  const silentDays = days - regularDays - saleDays
  const onSaleDay = 1 - silence * (1 - regularChance)
  return silentDays * Math.log1p(-regularChance) + regularDays * Math.log(regularChance) + saleDays * Math.log(onSaleDay)
}
