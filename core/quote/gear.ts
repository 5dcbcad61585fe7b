import type { Kind, Slot } from '../catalog/kinds.ts'
import { kindInText, SLOT_OF } from '../catalog/kinds.ts'
import type { Co2Spec, SumpSpec } from '../catalog/appliance-spec.ts'
import type { SpecOf } from '../catalog/spec.ts'
import { APPLIANCE_KINDS, type Appliance, type ApplianceKind, type ApplianceSpec, type Counted, type Gear } from '../sizing/gear.ts'
import type { Build } from './draft.ts'
import { piecesOf, type ProductsById } from './kit-parts.ts'

type PlainKind = Exclude<Kind, 'kit'>

const KIND_OF = Object.fromEntries(Object.entries(SLOT_OF).map(([kind, slot]) => [slot, kind])) as Record<Slot, PlainKind>

interface Part {
  kind: PlainKind
  name: string
  quantity: number
  spec: object
  owned?: true
}

function partsOf(build: Build, products: ProductsById): Part[] {
  const pieces = piecesOf(build, products).filter((piece) => !piece.setAside)
  const listed = pieces.map((piece): Part => ({
    kind: piece.product.kind,
    name: piece.product.name,
    quantity: piece.quantity,
    spec: ownSpec(piece.line, piece.product.spec),
    ...(piece.line.answer === 'owned' ? { owned: true as const } : {}),
  }))
  const described = build.lines.flatMap((line): Part[] =>
    line.answer === 'owned' && line.productId === null
      ? [
          {
            kind: KIND_OF[line.slot],
            name: line.description || `your own ${kindInText(KIND_OF[line.slot])}`,
            quantity: line.quantity,
            spec: line.spec ?? {},
            owned: true,
          },
        ]
      : [],
  )
  return [...listed, ...described]
}

/** What somebody read off an owned thing goes before the catalog. */
const ownSpec = (line: Build['lines'][number], spec: object): object =>
  line.answer === 'owned' && line.spec ? { ...spec, ...line.spec } : spec

/**
 * What a build physically is, for the sizing engine: kits taken apart, owned gear in, prices out.
 * A tank without its three outside dimensions is no tank yet.
 */
export function gearOf(build: Build, products: ProductsById): Gear {
  const parts = partsOf(build, products)
  const all = <K extends PlainKind>(kind: K): Counted<SpecOf[K]>[] =>
    parts.filter((part) => part.kind === kind) as unknown as Counted<SpecOf[K]>[]
  const one = <K extends PlainKind>(kind: K): Counted<SpecOf[K]> | null => all(kind)[0] ?? null
  const tank = one('tank')
  const measured = tank !== null && tank.spec.lengthMm > 0 && tank.spec.widthMm > 0 && tank.spec.heightMm > 0
  return {
    tank: measured ? tank : null,
    stand: one('stand'),
    mat: one('mat'),
    lid: one('lid'),
    filters: all('filter'),
    heaters: all('heater'),
    lights: all('light'),
    substrates: all('substrate'),
    conditioners: all('conditioner'),
    testKits: all('test_kit'),
    power: all('power'),
    ...others(all),
    notNeeded: Object.fromEntries(build.lines.flatMap((line) => (line.answer === 'not_needed' ? [[line.slot, line.reason]] : []))),
  }
}

type Others = Pick<Gear, 'ammoniaSources' | 'thermometers' | 'appliances' | 'salts' | 'purifiers' | 'animals' | 'sump'>

/** Left out where there are none, so that a build of basic parts reads as it always did. */
function others(all: <K extends PlainKind>(kind: K) => Counted<SpecOf[K]>[]): Others {
  const appliances = APPLIANCE_KINDS.flatMap((kind) => all(kind).flatMap((each) => applianceOf(kind, each)))
  const salts = all('salt_mix')
  const purifiers = all('ro_unit')
  const animals = all('livestock')
  const sump = sumpOfAll(all('sump'))
  return {
    ammoniaSources: all('ammonia_source'),
    thermometers: all('thermometer'),
    ...(appliances.length > 0 ? { appliances } : {}),
    ...(salts.length > 0 ? { salts } : {}),
    ...(purifiers.length > 0 ? { purifiers } : {}),
    ...(animals.length > 0 ? { animals } : {}),
    ...(sump ? { sump } : {}),
  }
}

/**
 * All sumps of a build, joined below, are counted as so many alike: of unlike ones the litres are their mean, where all state them. Sides stay open then, and
 * typical ones stand for them.
 */
function sumpOfAll(sumps: Array<Counted<SumpSpec>>): Counted<SumpSpec> | undefined {
  const [first] = sumps
  if (first === undefined || sumps.length === 1) return first
  const quantity = sumps.reduce((sum, each) => sum + each.quantity, 0)
  if (sumps.every(({ spec }) => JSON.stringify(spec) === JSON.stringify(first.spec))) return { ...first, quantity }
  const mean = (key: 'totalVolumeL' | 'operatingVolumeL'): SumpSpec =>
    sumps.some(({ spec }) => spec[key] === undefined)
      ? {}
      : { [key]: sumps.reduce((sum, each) => sum + each.quantity * (each.spec[key] ?? 0), 0) / quantity }
  return {
    ...first,
    name: sumps.map(({ name }) => name).join(' + '),
    quantity,
    spec: { ...mean('totalVolumeL'), ...mean('operatingVolumeL') },
  }
}

/** The figures that the checks read. A CO2 system without a valve that needs power is plugged in nowhere. */
function applianceOf(kind: ApplianceKind, { spec, ...counted }: Counted<SpecOf[ApplianceKind]>): Appliance[] {
  const { powerW, cordMm, coolingW, ratedFlowLph, ratedVolumeL, place } = spec as ApplianceSpec
  if (kind === 'co2' && powerW === undefined && isHandOperated(spec as Co2Spec)) return []
  const read: ApplianceSpec = {
    ...(powerW === undefined ? {} : { powerW }),
    ...(cordMm === undefined ? {} : { cordMm }),
    ...(kind === 'chiller' && coolingW !== undefined ? { coolingW } : {}),
    ...(kind === 'circulation_pump' && ratedFlowLph !== undefined ? { ratedFlowLph } : {}),
    ...(kind === 'skimmer' && ratedVolumeL !== undefined ? { ratedVolumeL } : {}),
    ...(kind === 'skimmer' && place !== undefined ? { place } : {}),
  }
  return [{ ...counted, kind, spec: read }]
}

const isHandOperated = ({ type, solenoid }: Co2Spec): boolean => solenoid === false || type === 'fermenting' || type === 'acid'
