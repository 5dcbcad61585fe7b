import { GRID_SIZE, gridPoint, watchedAlike, type SaleParameters } from './sale-grid.ts'

/** A sale goes through so many stages, several of which may end in a day (design rule 3): its length scatters less than with one. */
export const STAGES = 4
/** Regular, and the stages of a sale. */
export const STATES = STAGES + 1
const CELLS = STATES * STATES

/** Days of silence that one look-up spans; a longer gap takes several. */
export const LONGEST_GAP = 200

/**
 * For a gap of 1 to 200 days: chance to come from a state to a state over so many days, the days between silent. Silence on a regular day counts
 * as 1, on a sale day as `silence`: what all states have in common is a factor of its own.
 * Cell of gap g, from i, to j: `(g − 1) × 25 + 5 i + j`, state 0 being *regular*.
 */
export function gapTable(parameters: SaleParameters): Float64Array {
  const step = dayMatrix(parameters)
  const table = new Float64Array(LONGEST_GAP * CELLS)
  table.set(step)
  for (let gap = 1; gap < LONGEST_GAP; gap += 1) {
    const before = (gap - 1) * CELLS
    for (let from = 0; from < STATES; from += 1)
      for (let to = 0; to < STATES; to += 1) {
        let sum = 0
        for (let via = 0; via < STATES; via += 1) {
          const silent = via === 0 ? 1 : parameters.silence
          sum += (table[before + from * STATES + via] as number) * silent * (step[via * STATES + to] as number)
        }
        table[before + CELLS + from * STATES + to] = sum
      }
  }
  return table
}

/** One day: a regular day may begin a sale; of a sale a Poisson number of stages ends, with mean stages ÷ length. */
function dayMatrix({ startChance, lengthDays }: SaleParameters): Float64Array {
  const step = new Float64Array(CELLS)
  step[0] = 1 - startChance
  step[1] = startChance
  const mean = STAGES / lengthDays
  for (let from = 1; from <= STAGES; from += 1) {
    let chance = Math.exp(-mean)
    let left = 1
    for (let ended = 0; from + ended <= STAGES; ended += 1) {
      step[from * STATES + from + ended] = chance
      left -= chance
      chance *= mean / (ended + 1)
    }
    step[from * STATES] = left
  }
  return step
}

const tables: Array<Float64Array | undefined> = Array.from({ length: GRID_SIZE })

/** The table of a place in the grid. They do not depend on any record: made once, 40 kB each. */
export function gridTable(index: number): Float64Array {
  const known = tables[index]
  if (known !== undefined) return known
  const made = gapTable(gridPoint(index))
  tables[index] = made
  return made
}

/** Gap tables of some parameters, and of the same with silence that says nothing. */
export interface SaleTables {
  table: Float64Array
  silence: number
  unwatched: Float64Array
}

/** What the forward algorithm needs at a place in the grid. The first silence of the grid is 1: a day that nobody watches. */
export const gridTables = (index: number): SaleTables => ({
  table: gridTable(index),
  silence: gridPoint(index).silence,
  unwatched: gridTable(watchedAlike(index)),
})
