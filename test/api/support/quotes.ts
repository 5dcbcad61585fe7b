import type { Store } from '../../../core/catalog/store.ts'
import type { Product } from '../../../core/catalog/product.ts'
import { addDays, civilDateAt } from '../../../core/dates.ts'
import type { QuoteDraft } from '../../../core/quote/draft.ts'
import { emptyDraft } from '../../../core/quote/empty-draft.ts'
import type { Customer, QuoteView } from '../../../core/quote/quote-view.ts'
import { product, sighting, store, unique } from '../../support/rows.ts'
import type { Browser, World } from './world.ts'

export const today = (): string => civilDateAt(Date.now(), 'America/Detroit')

export interface Shop {
  tank: Product
  heater: Product
  shop: Store
}

/** A tank and a heater with a price each at one store. */
export async function stockedShop(world: World, member: Browser): Promise<Shop> {
  const shop = await store(world.db)
  const tank = await product(world.db, {
    kind: 'tank',
    name: unique('Tank'),
    spec: { lengthMm: 914, widthMm: 457, heightMm: 457, glassMm: 10, emptyMassKg: 38, style: 'rimless', material: 'glass' },
  })
  const heater = await product(world.db)
  for (const [priced, priceMinor] of [
    [tank, 15900],
    [heater, 3499],
  ] as const) {
    // prettier-ignore
    await member.send('POST', '/api/sightings', { body: sighting(priced.id, shop.id, { seenOn: today(), priceMinor }) })
  }
  return { tank, heater, shop }
}

export function draftOf({ tank, heater }: Shop, change: Partial<QuoteDraft> = {}): QuoteDraft {
  const empty = emptyDraft('one')
  const buy = (id: string, of: Product, quantity = 1) => ({
    id,
    answer: 'buy' as const,
    productId: of.id,
    quantity,
    storeId: null,
    note: '',
  })
  return {
    ...empty,
    title: 'A tank of 90 cm',
    need: { ...empty.need, lengthMm: 900, place: 'living room, north wall' },
    builds: [
      { id: 'one', name: 'Just enough', why: 'The least that is safe.', lines: [buy('t', tank), buy('h', heater)] },
      { id: 'two', name: 'With a spare', why: 'Two heaters share the work.', lines: [buy('t', tank), buy('h', heater, 2)] },
    ],
    suggestion: { buildId: 'two', reason: 'One heater can fail without harm.' },
    standsUntil: addDays(today(), 14),
    ...change,
  }
}

export async function newCustomer(advisor: Browser): Promise<Customer> {
  return (await advisor.send<Customer>('POST', '/api/customers', { body: { name: unique('Customer'), reach: 'at the counter' } })).body
}

export async function newQuote(advisor: Browser, draft: QuoteDraft): Promise<QuoteView> {
  const customer = await newCustomer(advisor)
  const made = await advisor.send<QuoteView>('POST', '/api/quotes', { body: { customerId: customer.id, draft } })
  if (made.status !== 201) throw new Error(made.text)
  return made.body
}

export const issue = (advisor: Browser, quote: QuoteView) =>
  advisor.send<QuoteView>('POST', `/api/quotes/${quote.id}/issue`, { headers: { 'if-match': `"${quote.version}"` } })

/** Path of a full address, for `app.request`. */
export const pathOf = (address: string | undefined): string => new URL(address ?? 'http://localhost/none').pathname
