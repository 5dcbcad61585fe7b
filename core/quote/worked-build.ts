import type { Product } from '../catalog/product.ts'
import type { Slot } from '../catalog/kinds.ts'
import type { TankSpec } from '../catalog/spec.ts'
import { buildCost, type CostLine } from '../pricing/build-cost.ts'
import type { BuildCost } from '../pricing/tiers.ts'
import type { Conditions } from '../sizing/conditions.ts'
import { sizingReport } from '../sizing/engine.ts'
import type { Gear } from '../sizing/gear.ts'
import type { SizingSubject } from '../sizing/report.ts'
import { bedDepthMm } from '../sizing/situation.ts'
import { plansOf } from '../sizing/tank-forms.ts'
import { sayPhrase } from '../units/say.ts'
import { resolveConditions } from './conditions.ts'
import { documentUnits } from './document-units.ts'
import { BUILD_LETTERS, type Build } from './draft.ts'
import { buildNames } from './build-names.ts'
import { gearOf } from './gear.ts'
import type { ProductsById } from './kit-parts.ts'
import { withServices } from './our-service.ts'
import { isPackSlot, packCover, sayPackCover } from './pack-cover.ts'
import type { AssembledBuild, DrawnPlan, QuoteInputs, SlotRow, WorkedBuild } from './revision.ts'
import { discountOf, namedStore, quoteMarket } from './quote-market.ts'
import { slotNeeds } from './slot-needs.ts'
import { slotRows } from './slot-rows.ts'
import { depositOn } from './terms.ts'

const byId = (products: Product[]): ProductsById => new Map(products.map((product) => [product.id, product]))

function costLines(build: Build, products: ProductsById, inputs: Pick<QuoteInputs, 'install'>): CostLine[] {
  return build.lines.flatMap((line): CostLine[] => {
    if (line.answer !== 'buy') return []
    const product = products.get(line.productId)
    const name = product?.name ?? 'a product that is no longer in the catalog'
    return [
      {
        lineId: line.id,
        productId: line.productId,
        kind: product?.kind,
        warrantyMonths: product?.warrantyMonths,
        name,
        quantity: line.quantity,
        storeId: namedStore(line, inputs),
        oversize: product?.oversize ?? false,
        archived: product?.archived ?? true,
      },
    ]
  })
}

/** What a build's goods cost, before our own services. */
export const goodsCost = (build: Build, inputs: QuoteInputs, products = byId(inputs.products)): BuildCost =>
  buildCost({ lines: costLines(build, products, inputs), ...quoteMarket(inputs), asOf: inputs.asOf, discount: discountOf(inputs) })

function drawingOf(gear: Gear, conditions: Conditions): AssembledBuild['drawing'] {
  if (gear.tank === null) return null
  const { lengthMm, widthMm, heightMm, style } = gear.tank.spec
  const standHeightMm = gear.stand?.spec.heightMm ?? null
  return {
    lengthMm,
    widthMm,
    heightMm,
    waterBelowRimMm: conditions.waterBelowRimMm,
    substrateDepthMm: bedDepthMm({ gear, conditions }),
    standHeightMm,
    style: style ?? 'rimless',
    ...drawnPlan(gear.tank.spec),
  }
}

/** What nobody stated of a shape is drawn in the middle of what it may be: the report says so. */
function drawnPlan(tank: TankSpec): { plan?: DrawnPlan } {
  const { shape } = tank
  if (shape === undefined || shape === 'rectangular') return {}
  const { plans } = plansOf(tank)
  const middle = (key: 'bowMm' | 'endMm') => plans.reduce((sum, plan) => sum + (plan[key] ?? 0), 0) / plans.length
  if (shape === 'bow_front') return { plan: { form: shape, bowMm: middle('bowMm') } }
  return shape === 'corner_cut' ? { plan: { form: shape, endMm: middle('endMm') } } : { plan: { form: shape } }
}

/** What a build physically is, and the room it will stand in. Undefined for an index that no build has. */
export function sizedSubject({ draft, products, install }: QuoteInputs, index: number): SizingSubject | undefined {
  const build = draft.builds[index]
  return build && { gear: gearOf(build, byId(products)), conditions: resolveConditions(draft.need, install) }
}

/**
 * One build worked out: slots, money, physics. Pure, so that the desk recomputes it at every edit and the server, from the same inputs, comes to the
 * same figures. The startup plan is what `assembleBuild` adds: nobody reads it while parts are still being chosen.
 *
 * Range: index 0 to builds − 1. Errors: RangeError beyond it.
 */
export function workBuild(inputs: QuoteInputs, index: number): WorkedBuild {
  const { draft } = inputs
  const install = { ...inputs.install, units: documentUnits(inputs) }
  const build = draft.builds[index]
  const letter = BUILD_LETTERS[index]
  if (build === undefined || letter === undefined) throw new RangeError(`No build ${index}`)
  const products = byId(inputs.products)
  const conditions = resolveConditions(draft.need, install)
  const gear = gearOf(build, products)
  const report = sizingReport({ gear, conditions })
  const cost = withServices(goodsCost(build, inputs, products), build.services ?? [])
  const needsOf = (slot: Slot): string | null => {
    const needs = slotNeeds(slot, gear, report.figures, conditions)
    return needs === null ? null : sayPhrase(needs, install.units)
  }
  const amountOf = (slot: Slot): SlotRow['amount'] => {
    const cover = isPackSlot(slot) ? packCover(slot, { gear, conditions }) : null
    return cover === null || !isPackSlot(slot)
      ? undefined
      : { words: sayPhrase(sayPackCover(slot, cover), install.units), short: cover.short }
  }
  return {
    id: build.id,
    letter,
    name: buildNames(draft, products)[index] ?? '',
    why: build.why,
    suggested: draft.suggestion?.buildId === build.id,
    rows: slotRows(build, { products, conditions, gear, report, units: install.units }, needsOf, amountOf),
    cost,
    ...(draft.deposit && { depositMinor: cost.today.complete ? depositOn(draft.deposit, cost.today.totalMinor) : null }),
    report,
    drawing: drawingOf(gear, conditions),
  }
}
