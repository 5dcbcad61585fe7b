import type { LivestockGroup } from './sizing/conditions.ts'
import type { ReaderUnits } from './units/quantity.ts'

/** What a manager sets on one screen: all but the livestock groups, which have their own. */
export type InstallSettings = Omit<Install, 'livestock'>

/** What one install is: a club's or a store's, its money, place and way of telling figures. */
export interface Install {
  name: string
  mode: 'club' | 'store'
  /** ISO 4217. */
  currency: string
  country: string
  timeZone: string
  units: ReaderUnits
  /** Printed where a reader should ask: "ask the club, 555-0100". */
  contact: string
  paper: 'a4' | 'letter'
  energyPriceMinor: number
  circuitVoltageV: number
  circuitCurrentA: number
  /** Smallest expected saving of a line that is worth waiting for, minor units; absent in what was kept before there was one: `LEAST_SAVING_MINOR`. */
  leastSavingMinor?: number | undefined
  /** Livestock groups that were edited here or are this place's own; the others are as they came. */
  livestock?: LivestockGroup[] | undefined
}

/** Five of a currency with two decimals: for less nobody looks at prices for weeks. Own. */
export const LEAST_SAVING_MINOR = 500
