import type { Product } from '../../../core/catalog/product.ts'
import { workBuild } from '../../../core/quote/worked-build.ts'
import { resolveConditions } from '../../../core/quote/conditions.ts'
import { gearOf } from '../../../core/quote/gear.ts'
import { packCover, packGivesL, type PackSlot } from '../../../core/quote/pack-cover.ts'
import { mixPacks } from '../../../core/quote/pack-mix.ts'
import type { WorkedBuild, QuoteInputs } from '../../../core/quote/revision.ts'
import { VERDICTS } from '../../../core/sizing/finding.ts'
import { candidateOf, worstVerdict } from './candidates.ts'
import { editDraft } from './draft-edit.ts'
import type { Offered } from './fill-rest.ts'

/** Slots whose chosen packs do not go as far as the build needs. */
export const shortSlots = (build: Pick<WorkedBuild, 'rows'>): PackSlot[] =>
  build.rows.flatMap((row) => (row.amount?.short === true ? [row.slot as PackSlot] : []))

/** Packs of one and the same thing: what is poured together must be alike but for the size of its bag. */
function sameThing(product: Product): string {
  const spec = product.spec as { type?: string; doseMlPerL?: number; bindsAmmonia?: boolean; gramsPerL?: number }
  return JSON.stringify([product.maker ?? product.name, spec.type, spec.doseMlPerL, spec.bindsAmmonia, spec.gramsPerL])
}

/**
 * The packs of one thing, in sizes that may mix, that bring what is still missing at the least cost; of several things that do, the one with the best verdict
 * and then the lowest total. Null where none with a price is known to do.
 */
export function fillByPacks(
  inputs: QuoteInputs,
  build: WorkedBuild,
  slot: PackSlot,
  offered: Offered,
  newLineId: () => string,
): QuoteInputs | null {
  const products = new Map(inputs.products.map((product) => [product.id, product]))
  const draftBuild = inputs.draft.builds.find((one) => one.id === build.id)
  if (draftBuild === undefined) return null
  const conditions = resolveConditions(inputs.draft.need, inputs.install)
  const cover = packCover(slot, { gear: gearOf(draftBuild, products), conditions })
  if (cover === null || cover.missingL === 0) return null
  const priced = offered.products.flatMap((product) => {
    const holds = packGivesL(product)?.low
    const one = candidateOf(product, { inputs, build, slot, quantity: 1, replaces: [], fetched: offered })
    return holds === undefined || one.offer === null ? [] : [{ product, holds, priceMinor: one.offer.minor }]
  })
  const tried = [...Map.groupBy(priced, ({ product }) => sameThing(product)).values()].flatMap((alike) => {
    const mix = mixPacks(cover.missingL, alike.map(({ product, ...pack }) => ({ id: product.id, ...pack }))) // prettier-ignore
    return mix === null ? [] : [withPacks(inputs, build.id, slot, mix.packs, offered, newLineId)]
  })
  const [best] = tried.filter(({ rank }) => rank <= MARGINAL).toSorted((a, b) => a.rank - b.rank || a.totalMinor - b.totalMinor)
  return best?.inputs ?? null
}

/** Best first: fits, marginal, then what is not taken. */
const rankOf = (verdict: (typeof VERDICTS)[number] | null): number =>
  verdict === null ? 0 : VERDICTS.length - 1 - VERDICTS.indexOf(verdict)
const MARGINAL = 1

function withPacks(
  inputs: QuoteInputs,
  buildId: string,
  slot: PackSlot,
  packs: ReadonlyArray<{ id: string; count: number }>,
  offered: Offered,
  newLineId: () => string,
): { inputs: QuoteInputs; rank: number; totalMinor: number } {
  const taken = new Set(packs.map(({ id }) => id))
  const draft = packs.reduce(
    (so, { id, count }) =>
      editDraft(so, {
        do: 'put_line',
        buildId,
        line: { id: newLineId(), answer: 'buy', productId: id, quantity: count, storeId: null, note: '' },
        replaces: [],
      }),
    inputs.draft,
  )
  const known = new Set(inputs.products.map((product) => product.id))
  const next: QuoteInputs = {
    ...inputs,
    draft,
    products: [...inputs.products, ...offered.products.filter(({ id }) => taken.has(id) && !known.has(id))],
    prices: [
      ...inputs.prices.filter((price) => !taken.has(price.productId)),
      ...offered.prices.filter((price) => taken.has(price.productId)),
    ],
  }
  const index = draft.builds.findIndex((one) => one.id === buildId)
  const after = workBuild(next, index)
  const { today } = after.cost
  return { inputs: next, rank: rankOf(worstVerdict(after, slot)), totalMinor: today.complete ? today.totalMinor : Number.MAX_SAFE_INTEGER }
}
