import type { CivilDate } from '../../core/dates.ts'
import type { QuoteDraft } from '../../core/quote/draft.ts'
import type { QuoteInputs } from '../../core/quote/revision.ts'
import { listCurrencyRates } from '../../db/currency-rates.ts'
import { listRegions } from '../../db/regions.ts'
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
  const { prices, products } = await loadPrices(c, productIdsOf(draft), today, install.mode)
  const all = await listStores(c.get('db'), { archived: 'all' })
  // In store mode other stores are nobody's business on a quote, not even by name.
  const stores = install.mode === 'store' ? all.filter(({ own }) => own) : all
  const regions = install.mode === 'store' ? [] : await listRegions(c.get('db'))
  const rates = await listCurrencyRates(c.get('db'))
  return {
    draft,
    products,
    stores,
    prices,
    install: plainInstall(install),
    ...(rates.length > 0 && { rates }),
    ...(regions.length > 0 && { regions }),
    asOf: today,
  }
}
