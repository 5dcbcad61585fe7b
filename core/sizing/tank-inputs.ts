import type { StandSpec, TankSpec } from '../catalog/spec.ts'
import { phrase } from '../units/quantity.ts'
import type { Gear } from './gear.ts'
import { figureEnds, MM, stateGear, stating, thinEnds, type GearChange } from './input-ends.ts'
import type { OpenInput } from './open-input.ts'
import { exactly, type Span } from './span.ts'
import { plansOf } from './tank-forms.ts'
import { ACRYLIC_OVER_GLASS, BOTTOM_OVER_SIDES, STAND_HEIGHT_MM, typicalGlassMm, typicalStandMassKg } from './typical-ranges.ts'

const TANK = { at: 'slot', slot: 'hold_water' } as const
const STAND = { at: 'slot', slot: 'carry_tank' } as const

const setTank =
  (spec: Partial<TankSpec>): GearChange =>
  (gear) => ({ ...gear, tank: gear.tank && stating(gear.tank, spec) })
const setStand =
  (spec: StandSpec): GearChange =>
  (gear) => ({ ...gear, stand: gear.stand && stating(gear.stand, spec) })

/** Thickness and material of the panels. */
function panelInputs({ tank }: Gear): OpenInput[] {
  if (!tank) return []
  const { lengthMm, heightMm, glassMm, bottomMm, material } = tank.spec
  const glass = typicalGlassMm(lengthMm, heightMm)
  const typical: Span =
    material === 'acrylic' ? { low: glass.low * ACRYLIC_OVER_GLASS.low, high: glass.high * ACRYLIC_OVER_GLASS.high } : glass
  const sides = glassMm === undefined ? typical : exactly(glassMm)
  const bottom = { low: sides.low * BOTTOM_OVER_SIDES.low, high: sides.high * BOTTOM_OVER_SIDES.high }
  const materials = (['glass', 'acrylic'] as const).map((each) => ({
    says: phrase`${each}`,
    state: stateGear(setTank({ material: each })),
  }))
  const found: Array<OpenInput | false> = [
    glassMm === undefined && {
      name: 'glass thickness',
      question: 'How thick is the glass?',
      place: TANK,
      ends: thinEnds(typical, (mm) => setTank({ glassMm: mm })),
    },
    bottomMm === undefined && {
      name: 'bottom thickness',
      question: 'How thick is the bottom?',
      place: TANK,
      ends: thinEnds(bottom, (mm) => setTank({ bottomMm: mm })),
    },
    material === undefined && { name: 'tank material', question: 'Is the tank glass or acrylic?', place: TANK, ends: materials },
  ]
  return found.filter((each) => each !== false)
}

/** What a shape needs besides its box. */
function planInputs({ tank }: Gear): OpenInput[] {
  if (!tank) return []
  const { plans, unstated } = plansOf(tank.spec)
  const [name] = unstated
  const [first, last] = [plans[0], plans.at(-1)]
  if (name === undefined || !first || !last) return []
  const key = tank.spec.shape === 'bow_front' ? 'bowMm' : 'endMm'
  const ends = { low: first[key] ?? 0, high: last[key] ?? 0 }
  return [{ name, question: PLAN_QUESTIONS[key], place: TANK, ends: figureEnds(ends, MM, (mm) => setTank({ [key]: mm })) }]
}

const PLAN_QUESTIONS = {
  bowMm: 'How far does the middle of the front stand out before its ends?',
  endMm: 'How deep are the short ends beside the cut front?',
}

/** Weight, feet and height of what carries the tank. */
function standInputs({ tank, stand }: Gear): OpenInput[] {
  if (!stand || !tank) return []
  const mass = typicalStandMassKg(tank.spec.lengthMm)
  const found: Array<OpenInput | false> = [
    stand.spec.massKg === undefined && {
      name: 'mass of the stand',
      question: 'How much does the stand weigh?',
      place: STAND,
      ends: figureEnds(mass, ['kg', 0], (massKg) => setStand({ massKg })),
    },
    stand.spec.heightMm === undefined && {
      name: 'height of the stand',
      question: 'How high is the stand?',
      place: STAND,
      ends: figureEnds(STAND_HEIGHT_MM, MM, (heightMm) => setStand({ heightMm })),
    },
    stand.spec.base === undefined && {
      name: 'how the stand meets the floor',
      question: 'Does the stand rest on feet, on end panels, or all over?',
      place: STAND,
      ends: BASES.map(([base, says]) => ({ says: phrase`${says}`, state: stateGear(setStand({ base })) })),
    },
  ]
  return found.filter((each) => each !== false)
}

const BASES = [['full', 'all over'], ['end_panels', 'end panels'], ['feet', 'feet']] as const // prettier-ignore
const COVERS = [['glass', 'glass'], ['plastic', 'plastic'], ['mesh', 'a mesh']] as const // prettier-ignore

function lidInputs({ lid }: Gear): OpenInput[] {
  if (!lid || lid.spec.cover !== undefined) return []
  const ends = COVERS.map(([cover, says]) => ({
    says: phrase`${says}`,
    state: stateGear((gear) => ({ ...gear, lid: gear.lid && stating(gear.lid, { cover }) })),
  }))
  return [{ name: 'what the lid is made of', question: 'What is the lid made of?', place: { at: 'slot', slot: 'cover' }, ends }]
}

/**
 * What nobody entered of the tank, what carries it and what lies over it.
 *
 * @example tankInputs(gear).map(({ name }) => name) // ['bottom thickness', 'mass of the stand']
 */
export const tankInputs = (gear: Gear): OpenInput[] => [...panelInputs(gear), ...planInputs(gear), ...standInputs(gear), ...lidInputs(gear)]
