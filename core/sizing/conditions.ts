/**
 * The room, the outlet and the water a build will meet, every figure resolved.
 * `assumed` names the fields that nobody stated and a default stands for.
 */
export interface Conditions extends OnlyStated {
  coldestRoomC: number
  warmestRoomC: number
  /** Water surface below the tank's upper rim. */
  waterBelowRimMm: number
  substrateDepthMm: number
  /** Circuit the tank will share. */
  circuitVoltageV: number
  circuitCurrentA: number
  otherLoadW: number
  outletHeightMm: number
  outletDistanceMm: number
  /** A GFCI or residual-current device already protects the circuit. */
  circuitProtected: boolean
  /** Price of a kilowatt hour in minor units of the install's currency; may have a fraction. */
  energyPriceMinor: number
  lightHoursPerDay: number
  plants: 'none' | 'low' | 'medium' | 'high'
  floor: 'ground_slab' | 'timber_upper' | 'concrete_upper' | 'unknown'
  livestock: LivestockGroup
  disinfectant: 'chlorine' | 'chloramine' | 'none' | 'unknown'
  assumed: ConditionField[]
}
/** What a default can stand for. Livestock is one of the five questions: it is always stated. Nothing stands for a joist that nobody measured. */
export type ConditionField = Exclude<keyof Conditions, 'assumed' | 'livestock' | keyof OnlyStated>

/** What no default is filled in for: absent is not known, and who reads it says what is taken. */
export interface OnlyStated extends JoistConditions {
  /** Share of the water changed at once. */
  waterChangePercent?: number | undefined
  /** Of the water that comes out of the tap in winter. */
  tapC?: number | undefined
  /** Height above the sea; absent is at the sea. */
  altitudeM?: number | undefined
  /** Lowest opening through which the tank drains into its sump, below the water line. */
  siphonBelowMm?: number | undefined
  /** Water in the pipes of the sump that falls back. */
  pipeVolumeL?: number | undefined
}

/** Of a timber floor, as far as somebody looked. Absent is not known. */
export interface JoistConditions {
  /** Between the walls or beams that carry them. */
  joistSpanMm?: number | undefined
  /** From the middle of one to the middle of the next. */
  joistSpacingMm?: number | undefined
  /** How the tank lies: its back against the wall that carries the joists, elsewhere across them, or along them. */
  joistLie?: 'bearing_wall' | 'across' | 'along' | undefined
  floorUse?: 'bedroom' | 'other' | undefined
}

/** What a group of animals asks of the water. The table is in catalog/livestock.ts, each row with its source. */
export interface LivestockGroup {
  id: string
  name: string
  examples: string
  lowestC: number
  targetC: number
  highestC: number
  /** Danger mark: a heater stuck on must not reach it. */
  dangerC: number
  /** Turnover an hour above which the group is harmed; null where none is known. */
  flowCeilingPerHour: number | null
  flowFloorPerHour: number
  smallestVolumeL: number
  feedGramsPerDay: number
  lidNeeded: boolean
  water: 'fresh' | 'salt'
  source: string
  /** Absent as it came with the service; else changed here, or this place's own. */
  standing?: 'edited' | 'own' | undefined
}
