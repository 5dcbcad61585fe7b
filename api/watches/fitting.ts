import type { Kysely } from 'kysely'
import type { Product } from '../../core/catalog/product.ts'
import { BUILD_LETTERS } from '../../core/quote/draft.ts'
import { fitsBuild } from '../../core/quote/fits-build.ts'
import type { Watch } from '../../core/pricing/watches/watch.ts'
import type { Database } from '../../db/database.ts'
import { getInstallWithGroups } from '../../db/livestock-groups.ts'
import { getProducts } from '../../db/products.ts'
import { findQuote } from '../../db/quotes.ts'
import { plainInstall } from '../day.ts'

/** Products of some that the build takes which a watch names; all where it names none, none where its owner may not see the quote any more. */
export async function fitting(db: Kysely<Database>, watch: Watch & { personId: string }, products: readonly Product[]): Promise<Product[]> {
  const fits = watch.requirement?.fits ?? null
  if (fits === null) return [...products]
  const quote = await findQuote(db, { id: watch.personId, role: 'advisor' }, fits.quoteId)
  if (!quote) return []
  const ids = quote.draft.builds.flatMap(({ lines }) =>
    lines.flatMap((line) => (line.answer === 'not_needed' || line.productId === null ? [] : [line.productId])),
  )
  const inputs = {
    draft: quote.draft,
    products: await getProducts(db, ids, { withParts: true }),
    install: plainInstall(await getInstallWithGroups(db)),
  }
  return products.filter((product) => fitsBuild(inputs, BUILD_LETTERS.indexOf(fits.letter), product))
}
