import type { CivilDate } from '../dates.ts'
import type { Conditions } from '../sizing/conditions.ts'

/**
 * What the customer asked for. The five questions first; every other field is optional and has a default that is marked *assumed*
 * (`resolveConditions` in conditions.ts of this folder).
 */
export interface Need {
  /** How big: a length, or a common size's id. */
  lengthMm: number | null
  commonSizeId: string | null
  /** Where it stands: "living room, north wall". */
  place: string
  /** What will live in it: id of a livestock group. */
  livestockId: string
  livestockNote: string
  /** How much money, in minor units. */
  budgetMinor: number | null
  /** By when. */
  byDate: CivilDate | null
  /** What a week's wait is worth to them for the whole purchase, minor units; absent or null: nothing, and only the day ends a wait. */
  weekWaitMinor?: number | null | undefined
  look: 'standard' | 'kit' | 'rimless' | 'any'
  /** Stores the customer will use; empty is all. */
  storeIds: string[]
  /** A region whose stores the customer will use, in place of single ones; absent or null: none. */
  regionId?: string | null | undefined
  usedAccepted: boolean
  exact: NeedExact
}

/** Under "more exact": only what someone stated. */
export type NeedExact = Partial<Omit<Conditions, 'assumed' | 'livestock'>> & {
  /** Overrides of the livestock group's figures. */
  targetC?: number
  dangerC?: number
  lowestC?: number
  tapPh?: number
  tapGhDegrees?: number
  tapKhDegrees?: number
}
