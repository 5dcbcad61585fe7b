import type { Product } from '../../../core/catalog/product.ts'
import { workBuild } from '../../../core/quote/worked-build.ts'
import { resolveConditions } from '../../../core/quote/conditions.ts'
import { gearOf } from '../../../core/quote/gear.ts'
import type { Build } from '../../../core/quote/draft.ts'
import { packCover, packGivesL, type PackCover, type PackSlot } from '../../../core/quote/pack-cover.ts'
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

/** What lies in the slot already, as things; null where nobody can say what it is, so that nothing is poured onto it unasked. */
function thingsThere(inputs: QuoteInputs, build: Pick<WorkedBuild, 'rows'>, slot: PackSlot): Set<string> | null {
  const rows = build.rows.filter((row) => row.slot === slot && row.answer !== 'missing' && row.answer !== 'not_needed')
  const products = rows.map((row) => inputs.products.find(({ id }) => id === row.productId))
  return products.some((product) => product === undefined) ? null : new Set(products.flatMap((one) => (one ? [sameThing(one)] : [])))
}

/**
 * Packs of one product that the slot takes once what it replaces is gone; 1 where a pack does not say how far it goes, or nothing is missing.
 *
 * @example packsOf(gravelOf5L, 'substrate', { inputs, build, replaces: [] }) // 4 for a bed of 18.3 L
 */
export function packsOf(product: Product, slot: PackSlot, { inputs, build, replaces }: Place): number {
  const holds = packGivesL(product)?.low
  const draftBuild = inputs.draft.builds.find((one) => one.id === build.id)
  if (draftBuild === undefined || holds === undefined || holds <= 0) return 1
  const lines = draftBuild.lines.filter(({ id }) => !replaces.includes(id))
  const cover = coverOf(inputs, { ...draftBuild, lines }, slot)
  return Math.min(MOST_PACKS, Math.max(1, Math.ceil((cover?.missingL ?? 0) / holds - SLACK)))
}
interface Place {
  inputs: QuoteInputs
  build: Pick<WorkedBuild, 'id'>
  replaces: readonly string[]
}
/** As many as one line may have. */
const MOST_PACKS = 999
/** What sums of decimals lose as doubles. */
const SLACK = 1e-9

function coverOf(inputs: QuoteInputs, build: Build, slot: PackSlot): PackCover | null {
  const products = new Map(inputs.products.map((product) => [product.id, product]))
  return packCover(slot, { gear: gearOf(build, products), conditions: resolveConditions(inputs.draft.need, inputs.install) })
}

/**
 * The packs of one thing, in sizes that may mix, that bring what is still missing at the least cost; of several things that do, the one with the best verdict
 * and then the lowest total. Where something lies there already it is more of the same: nobody asked for two kinds in one bed. Null where none with a price is
 * known to do.
 */
export function fillByPacks(
  inputs: QuoteInputs,
  build: WorkedBuild,
  slot: PackSlot,
  offered: Offered,
  newLineId: () => string,
): QuoteInputs | null {
  const draftBuild = inputs.draft.builds.find((one) => one.id === build.id)
  const there = thingsThere(inputs, build, slot)
  if (draftBuild === undefined || there === null) return null
  const cover = coverOf(inputs, draftBuild, slot)
  if (cover === null || cover.missingL === 0) return null
  const alikeOnly = offered.products.filter((product) => there.size === 0 || there.has(sameThing(product)))
  const priced = alikeOnly.flatMap((product) => {
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
