import { kindInText, SLOT_OF, type Slot } from '../catalog/kinds.ts'
import type { Counted, Gear } from './gear.ts'
import { heaterPowerW } from './heating.ts'
import { figureEnds, MM, stateGear, stating, WATTS, type Told } from './input-ends.ts'
import type { InputEnd, OpenInput } from './open-input.ts'
import { type Span, times } from './span.ts'
import { phrase, quantity } from '../units/quantity.ts'
import { footprintM2 } from './tank-forms.ts'
import { AMMONIA_STEP_MG_L, APPLIANCE_POWER_W, CORD_MM, FILTER_POWER_W, LIGHT_W_PER_M, LUMENS_PER_WATT } from './typical-ranges.ts'

type Plugged = 'heaters' | 'filters' | 'lights' | 'appliances'
/** What has a cord: all of that, and the strips. */
type Corded = Plugged | 'power'
/** What a plugged-in thing may say, whatever its kind. */
interface PluggedSpec {
  powerW?: number
  cordMm?: number
  luminousFluxLm?: number
  photonFluxUmolS?: number
}
type Item = Counted<PluggedSpec>

const SLOTS: Record<Exclude<Plugged, 'appliances'>, Slot> = { heaters: 'heat', filters: 'filter', lights: 'light' }
const NAMES = { heaters: 'heater', filters: 'filter', lights: 'light' } as const
const CORDS = { ...NAMES, appliances: 'appliance', power: 'strip' } as const
const LUMENS: Told = ['lm', 0]

const itemsOf = (gear: Gear, kind: Corded): readonly Item[] => gear[kind] ?? []

/** The same build with one item changed, by its place among its kind. */
const withItem =
  (kind: Corded, index: number, spec: PluggedSpec) =>
  (gear: Gear): Gear => ({ ...gear, [kind]: itemsOf(gear, kind).map((item, at) => (at === index ? stating(item, spec) : item)) })

/** Power that is commonly sold, W, by the very ranges that the checks take. */
function typicalPowerW({ tank, filters, appliances = [] }: Gear, kind: Plugged, index: number): Span {
  if (kind === 'heaters') return heaterPowerW(undefined, tank ? footprintM2(tank.spec).high * tank.spec.heightMm : 0)
  if (kind === 'lights') return times(LIGHT_W_PER_M, (tank?.spec.lengthMm ?? 0) / 1000)
  const appliance = appliances[index]
  if (kind === 'appliances') return appliance ? APPLIANCE_POWER_W[appliance.kind] : { low: 0, high: 0 }
  return FILTER_POWER_W[filters[index]?.spec.type ?? 'unknown']
}

/** All of a kind that state no power, together: a finding names the kind and not the thing. */
function powerInput(gear: Gear, kind: Plugged, name: string, slot: Slot, isMeant: (item: Item) => boolean): OpenInput[] {
  const open = itemsOf(gear, kind).flatMap((item, index) => (isMeant(item) && item.spec.powerW === undefined ? [index] : []))
  const [first] = open
  if (first === undefined || gear.tank === null) return []
  const at = (end: keyof Span): InputEnd => ({
    says: phrase`${quantity(typicalPowerW(gear, kind, first)[end], ...WATTS)}`,
    state: stateGear((from) =>
      open.reduce((changed, index) => withItem(kind, index, { powerW: typicalPowerW(gear, kind, index)[end] })(changed), from),
    ),
  })
  const ends = [at('low'), at('high')]
  return [{ name: `power of the ${name}`, question: `How many watts does the ${name} draw?`, place: { at: 'slot', slot }, ends }]
}

/** A cord is named by its thing, as its finding names it. */
function cordInputs(gear: Gear, kind: Corded, slotOf: (index: number) => Slot): OpenInput[] {
  const typical = CORD_MM[CORDS[kind]]
  return itemsOf(gear, kind).flatMap((item, index) =>
    item.spec.cordMm === undefined
      ? [
          {
            name: `cord of ${item.name}`,
            question: `How long is the cord of ${item.name}?`,
            place: { at: 'slot', slot: slotOf(index) },
            ends: figureEnds(typical, MM, (cordMm) => withItem(kind, index, { cordMm })),
          },
        ]
      : [],
  )
}

/** Light that a lamp's power allows where it states neither lumens nor photons. */
function lumenInputs(gear: Gear): OpenInput[] {
  const index = gear.lights.findIndex(({ spec }) => spec.luminousFluxLm === undefined && spec.photonFluxUmolS === undefined)
  if (index === -1) return []
  const stated = gear.lights[index]?.spec.powerW
  const power = stated === undefined ? typicalPowerW(gear, 'lights', index) : { low: stated, high: stated }
  const lumens = { low: power.low * LUMENS_PER_WATT.low, high: power.high * LUMENS_PER_WATT.high }
  const ends = figureEnds(lumens, LUMENS, (luminousFluxLm) => withItem('lights', index, { luminousFluxLm }))
  return [
    {
      name: 'lumens or photon flux of the light',
      question: 'How many lumens does the light give?',
      place: { at: 'slot', slot: 'light' },
      ends,
    },
  ]
}

function testInputs({ testKits }: Gear): OpenInput[] {
  if (!testKits.some(({ spec }) => spec.measuresAmmonia === true && spec.lowestAmmoniaMgL === undefined)) return []
  const ends = figureEnds(AMMONIA_STEP_MG_L, ['mg/L', 2], (lowestAmmoniaMgL) => (gear) => ({
    ...gear,
    testKits: gear.testKits.map((kit) => stating(kit, { lowestAmmoniaMgL })),
  }))
  const place = { at: 'slot', slot: 'test_water' } as const
  return [{ name: 'lowest step of the ammonia test', question: 'What is the lowest step of the ammonia test?', place, ends }]
}

/**
 * What nobody entered of everything plugged in, and of the tests.
 *
 * @example pluggedInputs(gear).map(({ name }) => name) // ['power of the heater', 'cord of Torvane 100 W']
 */
export function pluggedInputs(gear: Gear): OpenInput[] {
  const { appliances = [] } = gear
  const kinds = [...new Set(appliances.map(({ kind }) => kind))]
  return [
    ...(['heaters', 'filters', 'lights'] as const).flatMap((kind) => [
      ...powerInput(gear, kind, NAMES[kind], SLOTS[kind], () => true),
      ...cordInputs(gear, kind, () => SLOTS[kind]),
    ]),
    ...kinds.flatMap((kind) =>
      powerInput(gear, 'appliances', kindInText(kind), SLOT_OF[kind], (item) => appliances.find((each) => each === item)?.kind === kind),
    ),
    ...cordInputs(gear, 'appliances', (index) => SLOT_OF[appliances[index]?.kind ?? 'air_pump']),
    ...cordInputs(gear, 'power', () => SLOT_OF.power),
    ...lumenInputs(gear),
    ...testInputs(gear),
  ]
}
