/** How a value came to be known: as findings tell it of their rules (core/sizing/finding.ts). */
export type Standing = 'published' | 'from memory' | 'common practice' | 'own'

/** A share of the value, or so much in its own unit. */
export type Tolerance = { relative: number } | { absolute: number }

/** Where values come from, how close the code has to come, and what reckons them. */
export interface Origin {
  standing: Standing
  source: string
  within: Tolerance
  unit: string
  /** The file whose functions the values hold: of core, or of an oracle in this folder. */
  by: string
}

/** One check value: what a source says, and what the code makes of the same case. */
export interface ReferenceValue extends Origin {
  quantity: string
  value: number
  computed: () => number | undefined
}

export interface ReferenceTopic {
  title: string
  /** What a reader has to know of the cases below; empty where they say it all. */
  about: string
  /** Tests that hold the same code by other means: properties, oracles, findings. */
  alsoIn: readonly string[]
  values: readonly ReferenceValue[]
}

/**
 * Values of one origin.
 *
 * @example from({ standing: 'published', source: 'UNESCO 44 p. 19', within: { absolute: 1e-5 }, unit: 'kg/m³', by: 'core/water/density.ts' }, [
 *   ['sea water of salinity 35 and 25 °C', 1023.34306, () => seaWaterDensity(35, 25)],
 * ])
 */
export const from = (origin: Origin, rows: ReadonlyArray<readonly [string, number, () => number | undefined]>): ReferenceValue[] =>
  rows.map(([quantity, value, computed]) => ({ ...origin, quantity, value, computed }))

/** By how much the code misses a value, in the measure of its tolerance. @example missOf({ ...row, value: 100, computed: () => 101, within: { relative: 0.1 } }) // 0.01 */
export function missOf({ value, within, computed }: ReferenceValue): number {
  const off = Math.abs((computed() ?? NaN) - value)
  return 'relative' in within ? off / Math.abs(value) : off
}

/** The most that a value may be missed by. */
export const mostOf = ({ within }: ReferenceValue): number => ('relative' in within ? within.relative : within.absolute)
