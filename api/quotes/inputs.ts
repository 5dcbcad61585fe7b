import type { CivilDate } from '../../core/dates.ts'
import type { QuoteDraft } from '../../core/quote/draft.ts'
import type { QuoteInputs } from '../../core/quote/revision.ts'
import { listStores } from '../../db/stores.ts'
import type { Ctx } from '../context.ts'
import { installToday, plainInstall } from '../day.ts'
import { loadPrices } from '../price-views/load.ts'

const productIdsOf = (draft: QuoteDraft): string[] =>
  draft.builds.flatMap((build) =>
    build.lines.flatMap((line) => (line.answer === 'not_needed' || line.productId === null ? [] : [line.productId])),
  )

/** Everything that assembling a draft needs, of this day. */
export async function quoteInputs(c: Ctx, draft: QuoteDraft): Promise<QuoteInputs & { asOf: CivilDate }> {
  const { install, today } = await installToday(c)
  const { prices, products } = await loadPrices(c, productIdsOf(draft), today)
  const stores = await listStores(c.get('db'), { archived: 'all' })
  return { draft, products, stores, prices, install: plainInstall(install), asOf: today }
}
