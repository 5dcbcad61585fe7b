import type { AnswerPlace } from './answer-place.ts'
import type { Conditions } from './conditions.ts'
import type { Check, Finding, ToldFinding, Verdict } from './finding.ts'
import type { FloorPlan } from './floor-plan.ts'
import type { Gear } from './gear.ts'
import type { HeatCurve } from './heat-curve.ts'
import type { HeaterChoice } from './heater-choice.ts'
import type { LightAlong } from './light-along.ts'

/** One point of a pump's or a system's curve. */
export interface CurvePoint {
  flowLph: number
  headM: number
}

/** A pump against its hoses and media, for one filter and as a plot draws it: points in order of the flow. */
export interface PumpCurveFigure {
  filter: string
  pump: CurvePoint[]
  /** What hoses, fittings and media take, clean and loaded; both end at the pump's highest head or its greatest flow. */
  clean: CurvePoint[]
  loaded: CurvePoint[]
  /** Where pump and system meet. */
  cleanAt: CurvePoint
  loadedAt: CurvePoint
  /** Flow at that point over all that nobody stated. */
  cleanLph: { low: number; high: number }
  loadedLph: { low: number; high: number }
  /** What the group asks of all filters together. */
  floorLph: number
  ceilingLph: number | null
}

/** Figures other parts use: dosing, paper, plots. Undefined where a spec is missing; what nothing reckons with while parts are chosen comes with `withAllFigures`. */
export interface SizingFigures {
  outsideVolumeL?: number
  grossVolumeL?: number
  /** Water in use, substrate taken off: what is dosed. */
  waterVolumeL?: number
  /** Of it in the tank, where a sump holds the rest. */
  tankWaterL?: number
  emptyMassKg?: number
  runningMassKg?: number
  /** Filled to the rim for the leak test, stand included where known. */
  brimMassKg?: number
  substrateMassKg?: number
  /** High-loss end at the coldest room; low-loss end at the warmest. */
  coldLossW?: number
  usualLossW?: number
  heaterPowerW?: number
  stuckTemperatureC?: number
  /** From the target to the animals' danger mark with the strongest heater stuck on, at the low-loss end; absent where it never gets there. */
  stuckHours?: number
  /** Held in the coldest room after the strongest heater has failed off. */
  oneFailedC?: number
  /** Until the water is as cold as the animals bear, all heat lost in the coldest room; absent where it never is. */
  heatLostHours?: number
  /** Loss of the coldest room over the heaters' power, percent; above 100 they cannot hold it. */
  heaterDutyPercent?: number
  /** Right after a water change, and the hours until the heaters have made it good. */
  waterChange?: { mixedC: number; hours?: number }
  /** How many heaters of what power; absent where none is safe when stuck on, or none is needed. */
  heaterAdvice?: HeaterChoice
  evaporationLPerDay?: { low: number; high: number }
  /** Heat that holds the target against the temperature of the room, with the heaters' lines: for plots. */
  heatCurve?: HeatCurve
  flowLph?: number
  turnoverPerHour?: number
  lightAtBedUmol?: { low: number; high: number }
  /** Light at the substrate along the middle of the tank, end to end: for plots. */
  lightAlong?: LightAlong
  peakLoadW?: number
  /** Of the strongest filter whose pump's curve is known; what nobody stated stands at its middle. */
  pumpCurve?: PumpCurveFigure
  /** Cord that each appliance needs for its drip loop; `outletHeightMm` and `distanceMm` are a strip's where all go `to` one. */
  dripLoop?: {
    neededMm: number
    lowPointMm: number
    exitHeightMm: number
    outletHeightMm: number
    distanceMm: number
    /** Beside the rim, or on the wall beside the outlet; absent is the outlet itself. */
    to?: 'strip' | 'wall_strip'
  }
  /** The tank on its joists, where somebody measured them: for plots. */
  floorPlan?: FloorPlan
  /** By appliance and in all; the ends are those of the room, the losses and what nobody stated, and are absent from what was issued before they were told. */
  energy?: {
    items: Array<{ what: string; kwhPerYear: number; lowKwhPerYear?: number; highKwhPerYear?: number; costMinorPerYear?: number }>
    kwhPerYear: number
    lowKwhPerYear?: number
    highKwhPerYear?: number
    costMinorPerYear: number
    lowCostMinorPerYear?: number
    highCostMinorPerYear?: number
  }
}

export interface SizingReport {
  /** Hurt-first within worst-first. */
  findings: Finding[]
  /** Findings by their verdicts; a floor within its usual allowance is in none of them. `sayCounts` tells it beside them. */
  counts: Record<Verdict, number>
  /** At most three that matter on page one, as indexes into findings: what can hurt first. */
  pageOne: number[]
  figures: SizingFigures
}

/** A report as it is read, printed and kept: `withRanges` in sensitivity.ts. */
export interface ToldReport extends SizingReport {
  findings: ToldFinding[]
  /** What to ask next: the open inputs that would settle or change most, what can hurt first in front. Absent from what was issued before they were told. */
  questions?: OpenQuestion[]
}

/** One open input, as a person is asked for it. */
export interface OpenQuestion {
  /** "How thick is the glass?" */
  text: string
  /** As findings name it: "glass thickness". */
  input: string
  place: AnswerPlace
  /** What its answer would settle or change, what can hurt first in front. */
  checks: Check[]
}

/** Input of the engine: `sizingReport(subject)` in engine.ts. */
export interface SizingSubject {
  gear: Gear
  conditions: Conditions
}
