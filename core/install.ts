import type { ReaderUnits } from './units/quantity.ts'

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
}
