import { livestockGroup } from '../../core/catalog/livestock.ts'
import type { QuoteDraft } from '../../core/quote/draft.ts'
import { markFaults } from '../../core/sizing/livestock-marks.ts'
import { getInstallWithGroups } from '../../db/livestock-groups.ts'
import { getProducts } from '../../db/products.ts'
import { findQuote } from '../../db/quotes.ts'
import { findRegion } from '../../db/regions.ts'
import { listStores } from '../../db/stores.ts'
import { signedIn, type Ctx } from '../context.ts'
import type { FieldError } from '../http/problem.ts'
import { problem } from '../http/problem.ts'

interface Reference {
  field: string
  id: string
}

function references(draft: QuoteDraft): { products: Reference[]; stores: Reference[] } {
  const lines = draft.builds.flatMap((build, b) => build.lines.map((line, l) => ({ line, path: `builds.${b}.lines.${l}` })))
  const products = lines.flatMap(({ line, path }) =>
    line.answer === 'not_needed' || line.productId === null ? [] : [{ field: `${path}.productId`, id: line.productId }],
  )
  const stores = lines.flatMap(({ line, path }) =>
    line.answer !== 'buy' || line.storeId === null ? [] : [{ field: `${path}.storeId`, id: line.storeId }],
  )
  const discounted = draft.discount?.storeId ? [{ field: 'discount.storeId', id: draft.discount.storeId }] : []
  return {
    products,
    stores: [...stores, ...discounted, ...draft.need.storeIds.map((id, index) => ({ field: `need.storeIds.${index}`, id }))],
  }
}

const unknown = (all: Reference[], known: ReadonlySet<string>, message: string): FieldError[] =>
  all.filter(({ id }) => !known.has(id)).map(({ field }) => ({ field, message }))

/** A region that was taken out since the quote named it may stay: it then leaves the stores that are ticked, and the desk says that it is gone. */
async function regionFaults(c: Ctx, { need: { regionId } }: QuoteDraft, quoteId: string | undefined): Promise<FieldError[]> {
  if (regionId === undefined || regionId === null || (await findRegion(c.get('db'), regionId))) return []
  const before = quoteId === undefined ? undefined : await findQuote(c.get('db'), signedIn(c), quoteId)
  if (before?.draft.need.regionId === regionId) return []
  return [{ field: 'need.regionId', message: 'There is no such region; it may have been taken out. Choose another, or none.' }]
}

/** Refuses a draft that names a product, store, region or livestock group there is not, or temperatures that the group's marks contradict; null where all are known. `quoteId` is the quote that it is saved over. */
export async function draftFaults(c: Ctx, draft: QuoteDraft, quoteId?: string) {
  const named = references(draft)
  const products = await getProducts(c.get('db'), [...new Set(named.products.map(({ id }) => id))])
  const stores = await listStores(c.get('db'), { archived: 'all' })
  const group = livestockGroup(draft.need.livestockId, await getInstallWithGroups(c.get('db')))
  const faults = [
    ...(group === undefined
      ? [{ field: 'need.livestockId', message: 'There is no livestock group with this id.' }]
      : markFaults(group, draft.need.exact).map(({ field, message }) => ({ field: `need.exact.${field}`, message }))),
    ...unknown(named.products, new Set(products.map(({ id }) => id)), 'This product is not in the catalog.'),
    ...unknown(named.stores, new Set(stores.map(({ id }) => id)), 'This store is not known.'),
    ...(await regionFaults(c, draft, quoteId)),
  ].map((fault) => ({ ...fault, field: `draft.${fault.field}` }))
  return faults.length === 0 ? null : problem(c, 422, 'invalid', faults[0]?.message ?? '', faults)
}
