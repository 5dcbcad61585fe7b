import type { FilterSpec } from '../catalog/spec.ts'
import { phrase, quantity } from '../units/quantity.ts'
import { isCurved, usualHoses } from './canister-flow.ts'
import { mediaOfOne } from './filter-feed.ts'
import type { Gear } from './gear.ts'
import { figureEnds, stateGear, stating, type GearChange } from './input-ends.ts'
import type { InputEnd, OpenInput } from './open-input.ts'
import type { Span } from './span.ts'
import { flowShare } from './filter-delivery.ts'

const FILTER = { at: 'slot', slot: 'filter' } as const

/** The same build with what is found for each filter stated of it. */
const withFilters =
  (specOf: (spec: FilterSpec) => FilterSpec | null): GearChange =>
  (gear) => ({ ...gear, filters: gear.filters.map((item) => stating(item, specOf(item.spec) ?? {})) })

const isMeasured = ({ measuredFlowLph }: FilterSpec): boolean => measuredFlowLph !== undefined
const isDerated = (spec: FilterSpec): boolean => spec.ratedFlowLph !== undefined && !isCurved(spec) && !isMeasured(spec)
const isReckoned = (spec: FilterSpec): boolean => isCurved(spec) && !isMeasured(spec)

const lph = (value: number) => phrase`${quantity(value, 'L/h', 0)}`

/** What media and hoses leave of a printed flow: somebody may hold a bucket under the return. */
function shareInputs({ filters }: Gear): OpenInput[] {
  const [first] = filters.filter(({ spec }) => isDerated(spec))
  if (!first) return []
  const share = ({ type, ratedFlowLph = 0 }: FilterSpec, key: keyof Span): number => flowShare(type)[key] * ratedFlowLph
  const end = (key: keyof Span): InputEnd => ({
    says: lph(share(first.spec, key)),
    state: stateGear(withFilters((spec) => (isDerated(spec) ? { measuredFlowLph: share(spec, key) } : null))),
  })
  const question = 'What flow comes out of the filter’s return, measured with a bucket (Flow, measured)?'
  return [{ name: 'flow that media leave', question, place: FILTER, ends: [end('low'), end('high')] }]
}

function mediaInputs({ filters }: Gear): OpenInput[] {
  if (filters.every(({ spec }) => spec.mediaVolumeL !== undefined)) return []
  const end = (key: keyof Span): InputEnd => ({
    says: phrase`${quantity(mediaOfOne(filters.find(({ spec }) => spec.mediaVolumeL === undefined)?.spec ?? {})[key], 'L', 1)}`,
    state: stateGear(withFilters((spec) => ({ mediaVolumeL: mediaOfOne(spec)[key] }))),
  })
  const question = 'How many litres of media does the filter hold (Media volume)?'
  return [{ name: 'volume of the media', question, place: FILTER, ends: [end('low'), end('high')] }]
}

/** Half of the flow is where the two forms of a curve lie furthest apart: a straight line leaves half of the head there, a parabola three quarters. */
const MIDDLE = 0.5
const HEAD_THERE = { line: MIDDLE, parabola: 1 - MIDDLE ** 2 } as const

function curveInputs({ filters }: Gear): OpenInput[] {
  const isOpen = (spec: FilterSpec): boolean => isReckoned(spec) && (spec.midHeadM === undefined || spec.midFlowLph === undefined)
  if (!filters.some(({ spec }) => isOpen(spec))) return []
  const end = (form: keyof typeof HEAD_THERE, says: string): InputEnd => ({
    says: phrase`${says}`,
    state: stateGear((gear) => ({
      ...gear,
      filters: gear.filters.map((item) => {
        if (!isOpen(item.spec)) return item
        const { ratedFlowLph = 0, maxHeadM = 0 } = item.spec
        return { ...item, spec: { ...item.spec, midFlowLph: MIDDLE * ratedFlowLph, midHeadM: HEAD_THERE[form] * maxHeadM } }
      }),
    })),
  })
  const question = 'Through which point does the pump’s curve go (Head at a point of its curve, Flow at that point)?'
  return [
    { name: 'form of the pump’s curve', question, place: FILTER, ends: [end('line', 'a straight line'), end('parabola', 'a parabola')] },
  ]
}

function hoseInputs(gear: Gear): OpenInput[] {
  const { tank, filters } = gear
  if (!tank) return []
  const open = (key: 'hoseLengthMm' | 'fittings'): boolean => filters.some(({ spec }) => isReckoned(spec) && spec[key] === undefined)
  const type = filters.find(({ spec }) => isReckoned(spec))?.spec.type
  const length: OpenInput = {
    name: 'length of the hoses',
    question:
      type === 'return_pump'
        ? 'How long is the pipe from the return pump to the tank (Hoses, length)?'
        : 'How long are both hoses together (Hoses, length)?',
    place: FILTER,
    ends: figureEnds(usualHoses({ gear, tank: tank.spec }, type), ['mm', 0], (hoseLengthMm) =>
      withFilters((spec) => (isReckoned(spec) ? { hoseLengthMm } : null)),
    ),
  }
  const fittings: OpenInput = {
    name: 'fittings in the hoses',
    question: 'What sits in the hoses: taps, bends, narrow couplings (Fittings)?',
    place: FILTER,
    ends: (['few', 'usual', 'many'] as const).map((each) => ({
      says: phrase`${each}`,
      state: stateGear(withFilters((spec) => (isReckoned(spec) ? { fittings: each } : null))),
    })),
  }
  return [...(open('hoseLengthMm') ? [length] : []), ...(open('fittings') ? [fittings] : [])]
}

/**
 * What nobody entered of the filters' flow and media, by the fields of their form.
 *
 * @example flowInputs(gear).map(({ name }) => name) // ['flow that media leave', 'volume of the media']
 */
export const flowInputs = (gear: Gear): OpenInput[] =>
  gear.tank === null ? [] : [...shareInputs(gear), ...curveInputs(gear), ...hoseInputs(gear), ...mediaInputs(gear)]
