import type { Finding } from '../sizing/finding.ts'
import { applianceCount } from '../sizing/outlets.ts'
import type { SizingFigures, SizingSubject } from '../sizing/report.ts'
import { phrase, quantity, type Unit } from '../units/quantity.ts'
import type { ExplainedInput, Explanation } from './explanation.ts'
import { FORMULAS } from './formulas.ts'
import { gearInputs } from './gear-inputs.ts'
import { openInputsOf } from './open-words.ts'
import { groupInputs, roomAnswers } from './room-inputs.ts'
import { WHAT_GOES_IN, type FigureField } from './what-goes-in.ts'
import { workedOf } from './worked.ts'

const FIGURES: Record<FigureField, [name: string, unit: Unit, digits: number]> = {
  waterVolumeL: ['Water in use', 'L', 1],
  tankWaterL: ['Water in the tank', 'L', 1],
  emptyMassKg: ['Mass of the empty tank', 'kg', 1],
  runningMassKg: ['Mass of the tank in use', 'kg', 0],
  coldLossW: ['Heat lost in the coldest room', 'W', 0],
  flowLph: ['Flow of the filters', 'L/h', 0],
  peakLoadW: ['All appliances at once', 'W', 0],
}

/** What was worked out on the way, where it is known. @example figureInputs(figures, ['waterVolumeL'])[0]?.name // 'Water in use' */
export const figureInputs = (figures: SizingFigures, fields: readonly FigureField[]): ExplainedInput[] =>
  fields.flatMap((field): ExplainedInput[] => {
    const value = field === 'tankWaterL' ? (figures.tankWaterL ?? figures.waterVolumeL) : figures[field]
    const [name, unit, digits] = FIGURES[field]
    return value === undefined ? [] : [{ name, value: phrase`${quantity(value, unit, digits)}`, from: 'reckoned' }]
  })

/** What is counted rather than read. */
function countedInputs({ check }: Finding, subject: SizingSubject): ExplainedInput[] {
  if (check === 'outlets') return [{ name: 'Things with a plug', value: phrase`${applianceCount(subject)}`, from: 'entered' }]
  const pumps = (subject.gear.appliances ?? []).filter(({ kind }) => kind === 'air_pump')
  if (check !== 'surface_oxygen' || pumps.length === 0) return []
  return [{ name: 'Air pump', value: phrase`its bubbles stir the surface`, from: 'entered' }]
}

/**
 * How a finding came about: its formula in words, and all that went in, each with its unit and where it comes from. Kept out of the engine: it is asked for
 * where somebody opens it, and where a report is printed.
 *
 * Units: figures in the unit of storage, told in the reader's. Errors: none. Source: the finding's own.
 *
 * @example explainFinding(finding, subject, figures).inputs[0] // { name: '2 × Heater (Torvane)', value: ['power ', 100 W], from: 'entered' }
 */
export function explainFinding(finding: Finding, subject: SizingSubject, figures: SizingFigures): Explanation {
  const { gear = {}, room = [], group = [], figures: worked = [] } = WHAT_GOES_IN[finding.check]
  return {
    formula: FORMULAS[finding.check](finding, subject),
    inputs: [
      ...gearInputs(subject.gear, gear),
      ...countedInputs(finding, subject),
      ...roomAnswers(subject.conditions, room, [...finding.assumed, ...finding.missing]),
      ...groupInputs(subject.conditions, group),
      ...openInputsOf(finding, subject),
      ...figureInputs(figures, worked),
      ...workedOf(finding, subject),
    ],
  }
}
