import type { SumpSpec } from '../catalog/appliance-spec.ts'
import { phrase, quantity, type Unit } from '../units/quantity.ts'
import type { Conditions, OnlyStated } from './conditions.ts'
import type { Gear } from './gear.ts'
import { figureEnds, MM, stateGear, stating, type GearChange, type Told } from './input-ends.ts'
import type { OpenInput } from './open-input.ts'
import { type Span, times } from './span.ts'
import { sumpOf, sumpSides, wantsSump } from './sump.ts'
import { PIPES_L, SIPHON_BELOW_MM, SUMP_HEIGHT_MM } from './typical-ranges.ts'

const SUMP = { at: 'slot', slot: 'sump' } as const
const LITRES: Told = ['L', 0]

const setSump =
  (spec: Partial<SumpSpec>): GearChange =>
  (gear) =>
    gear.sump ? { ...gear, sump: stating(gear.sump, spec) } : gear

/** A figure of the room that no default stands for. */
function roomInput(field: 'siphonBelowMm' | 'pipeVolumeL', name: string, question: string, { low, high }: Span, unit: Unit): OpenInput {
  const stated = (value: number): OnlyStated => ({ [field]: value })
  return {
    name,
    question,
    place: { at: 'need', field },
    ends: [low, high].map((value) => ({
      says: phrase`${quantity(value, unit, unit === 'mm' ? 0 : 1)}`,
      state: (subject) => ({ ...subject, conditions: { ...subject.conditions, ...stated(value) } }),
    })),
  }
}

/** A box whose form nobody stated, between a compact and a flat one. */
function sidesInput(litres: number, wallMm: number | undefined): OpenInput {
  const end = (form: 'compact' | 'flat') => {
    const sides = sumpSides(litres, form, wallMm)
    const [length, width, height] = [sides.lengthMm, sides.widthMm, sides.heightMm].map((value) => quantity(value, ...MM))
    return { says: phrase`${length ?? ''} × ${width ?? ''} × ${height ?? ''}`, state: stateGear(setSump(sides)) }
  }
  const question = 'How long, deep and high is the sump outside (Length, Width, Height)?'
  return { name: 'sides of the sump', question, place: SUMP, ends: [end('compact'), end('flat')] }
}

/** Whether a pipe or a cord leaves over the sump's rim. */
const standsInSump = ({ heaters, filters, appliances = [] }: Gear): boolean =>
  heaters.length > 0 || filters.some(({ spec }) => spec.type === 'return_pump') || appliances.some(({ spec }) => spec.place === 'in_sump')

/**
 * What nobody entered of a sump and of what drains into it.
 *
 * @example sumpInputs(gear, conditions).map(({ name }) => name) // ['siphon level', 'water in the pipes']
 */
export function sumpInputs(gear: Gear, conditions: Conditions): OpenInput[] {
  if (gear.tank === null || !wantsSump(gear)) return []
  const sump = sumpOf(gear, conditions.livestock)
  const found: Array<OpenInput | false | null> = [
    conditions.siphonBelowMm === undefined &&
      roomInput(
        'siphonBelowMm',
        'siphon level',
        'How far below the water line does the tank drain when the pump stops (Siphon level below the water)?',
        SIPHON_BELOW_MM,
        'mm',
      ),
    conditions.pipeVolumeL === undefined &&
      roomInput('pipeVolumeL', 'water in the pipes', 'How much water stands in the pipes of the sump (Water in the pipes)?', PIPES_L, 'L'),
    sump &&
      sump.totalL.low < sump.totalL.high && {
        name: 'volume of the sump',
        question: 'How much does the sump hold to its rim (Volume to the rim)?',
        place: SUMP,
        ends: figureEnds(times(sump.totalL, 1 / sump.count), LITRES, (totalVolumeL) => setSump({ totalVolumeL })),
      },
    sump &&
      gear.sump?.spec.operatingVolumeL === undefined && {
        name: 'water in the sump',
        question: 'How much water stands in the sump while the pump runs (Water while the pump runs)?',
        place: SUMP,
        ends: figureEnds(times(sump.runningL, 1 / sump.count), LITRES, (operatingVolumeL) => setSump({ operatingVolumeL })),
      },
    sump &&
      gear.sump?.spec.heightMm === undefined &&
      standsInSump(gear) && {
        name: 'height of the sump',
        question: 'How high is the sump outside (Height)?',
        place: SUMP,
        ends: figureEnds(SUMP_HEIGHT_MM, MM, (heightMm) => setSump({ heightMm })),
      },
    gear.sump?.spec.totalVolumeL !== undefined &&
      sump &&
      sump.sidesUnstated.length > 0 &&
      sidesInput(gear.sump.spec.totalVolumeL, gear.sump.spec.wallMm),
  ]
  return found.filter((input) => input !== false && input !== null)
}
