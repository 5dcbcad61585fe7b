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
  /** Livestock groups that were edited here or are this place's own; the others are as they came. */
  livestock?: LivestockGroup[] | undefined
}
