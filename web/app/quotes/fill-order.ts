import { SLOT_OF, type Kind, type Slot } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import { resolveConditions } from '../../../core/quote/conditions.ts'
import { packNeedL } from '../../../core/quote/pack-cover.ts'
import { gearOf } from '../../../core/quote/gear.ts'
import type { QuoteInputs, WorkedBuild } from '../../../core/quote/revision.ts'

type Built = Pick<WorkedBuild, 'rows' | 'report' | 'drawing'>

/** A light of so much of the tank's length lies from rim to rim; a shorter one, though it may do, hangs over the water of an open tank. Own. */
const SPANS = 0.9
/** Two heaters share a tank as a rule; where it takes more, a lid saves one. Own. */
const USUAL_HEATERS = 2
/** More than any number of heaters. */
const FALLS = 1000

const isMissing = ({ rows }: Pick<Built, 'rows'>, slot: Slot): boolean =>
  rows.filter((row) => row.slot === slot).every((row) => row.answer === 'missing' && row.lineId === null)

/** What heat and salt lack in a build, the less the better: its heaters, and far more where they do not hold the water, or what evaporates drives the salinity. */
export function lackOfHeat({ rows, report }: Pick<Built, 'rows' | 'report'>): number {
  const heaters = rows.reduce((sum, row) => sum + (row.slot === 'heat' ? row.quantity : 0), 0)
  const falls = report.findings.some(
    ({ check, verdict }) =>
      (check === 'heater_holds' || check === 'salinity_drift') && (verdict === 'does_not_fit' || verdict === 'marginal'),
  )
  return heaters + (falls ? FALLS : 0)
}

/**
 * Whether heat or salt asks for a lid on a tank that nobody said should stay open.
 *
 * @example mayWantLid(openTankInAColdRoom) // true
 */
export const mayWantLid = (build: Built): boolean =>
  build.drawing !== null && isMissing(build, 'cover') && lackOfHeat(build) > USUAL_HEATERS

/** A return pump where no sump stands: it fills nothing, and asks for one. */
export const lacksItsSump = (product: Product, build: Pick<Built, 'rows'>): boolean =>
  product.kind === 'filter' && product.spec.type === 'return_pump' && isMissing(build, 'sump')

/** Figures without which a part cannot be reckoned with, in the report or on the checklist. Own, from what the checks and the steps read. */
const READ: Partial<Record<Kind, readonly string[]>> = {
  ammonia_source: ['form', 'strength'],
  conditioner: ['doseMlPerL'],
  filter: ['ratedFlowLph', 'powerW'],
  heater: ['powerW'],
  light: ['powerW'],
  power: ['outlets', 'ratedCurrentA'],
  sump: ['totalVolumeL', 'operatingVolumeL'],
}

const unstated = ({ kind, spec }: Product): number => READ[kind]?.filter((key) => !(key in spec)).length ?? 0

/**
 * What is asked of a product before its price, the less the better: figures that are read and that it does not state, and for a light that it spans the tank.
 *
 * @example leastShort(build)(lightOf36InOver48In) // 1
 */
export const leastShort =
  ({ drawing }: Pick<Built, 'drawing'>) =>
  (product: Product): number =>
    unstated(product) + (product.kind === 'light' && drawing !== null && (product.spec.lengthMm ?? 0) < SPANS * drawing.lengthMm ? 1 : 0)

/** Whether a product is of the heaters that the slot asks for, in that number: they serve, though one stuck on may be marginal, and stronger ones are money for nothing. */
export function isAsked({ report }: Pick<Built, 'report'>, product: Product, quantity: number): boolean {
  const asked = report.figures.heaterAdvice
  if (product.kind !== 'heater' || asked === undefined || asked.count !== quantity) return false
  const powerW = product.spec.powerW ?? 0
  return powerW >= asked.eachLowestW && powerW <= asked.eachHighestW
}

/**
 * Slots that a tank of fresh water has as a rule, though it may do without: lid, light and bed, where nobody has answered them. A marine tank often stays open.
 * None before there is a tank to fit them to.
 *
 * @example usualSlots(inputs, buildOfATankAlone) // ['cover', 'light', 'substrate']
 */
export function usualSlots(inputs: QuoteInputs, build: Built & Pick<WorkedBuild, 'id'>): Slot[] {
  const draftBuild = inputs.draft.builds.find(({ id }) => id === build.id)
  if (draftBuild === undefined || build.drawing === null) return []
  const conditions = resolveConditions(inputs.draft.need, inputs.install)
  const gear = gearOf(draftBuild, new Map(inputs.products.map((product) => [product.id, product])))
  const usual: Slot[] = conditions.livestock.water === 'salt' ? [] : ['cover', 'light']
  const bed: Slot[] = usual.length > 0 && packNeedL('substrate', { gear, conditions }) !== null ? ['substrate'] : []
  return [...usual, ...bed].filter((slot) => isMissing(build, slot))
}

/** The sump that a return pump stands in, where none is there. @example sumpWanted(inputs, buildWithAReturnPump) // ['sump'] */
export function sumpWanted(inputs: QuoteInputs, build: Pick<WorkedBuild, 'rows'>): Slot[] {
  const pumps = inputs.products.filter((product) => product.kind === 'filter' && product.spec.type === 'return_pump').map(({ id }) => id)
  const isPumped = build.rows.some(({ slot, productId }) => slot === SLOT_OF.filter && productId !== null && pumps.includes(productId))
  return isPumped && isMissing(build, 'sump') ? ['sump'] : []
}
