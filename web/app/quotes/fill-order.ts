import type { Slot } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'

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

/**
 * What is asked of a product before its price: 1 for a light that does not span the tank, 0 for everything else.
 *
 * @example leastShort(build)(lightOf36InOver48In) // 1
 */
export const leastShort =
  ({ drawing }: Pick<Built, 'drawing'>) =>
  (product: Product): number =>
    product.kind === 'light' && drawing !== null && (product.spec.lengthMm ?? 0) < SPANS * drawing.lengthMm ? 1 : 0
