import type { Product } from '../../../core/catalog/product.ts'
import type { BuildLine } from '../../../core/quote/draft.ts'
import { emptyDraft } from '../../../core/quote/empty-draft.ts'
import type { Need } from '../../../core/quote/need.ts'
import type { QuoteInputs } from '../../../core/quote/revision.ts'
import { METRIC } from '../../../core/units/say.ts'

const row = { maker: null, gtin: null, oversize: false, note: null, archived: false, version: 1, parts: [] }

/** A product whose id is its name. */
export const productOf = (kind: Product['kind'], name: string, spec: object): Product => ({ ...row, id: name, kind, name, spec }) as Product

export const sampleTank = productOf('tank', 'Wendlemere 90', {
  lengthMm: 900, widthMm: 450, heightMm: 450, glassMm: 8, bottomMm: 8, material: 'glass', style: 'rimless',
}) // prettier-ignore

export const buy = (product: Product, quantity = 1): BuildLine => ({
  id: `line-${product.id}`, answer: 'buy', productId: product.id, quantity, storeId: null, note: '',
}) // prettier-ignore

/** One build of these products, bought nowhere: what it needs and what it is, not what it costs. */
export function sampleInputs(products: Product[], need: Partial<Need> = {}, counts: Record<string, number> = {}): QuoteInputs {
  const draft = emptyDraft('a')
  return {
    draft: {
      ...draft,
      need: { ...draft.need, ...need },
      builds: [{ id: 'a', name: '', why: '', lines: products.map((product) => buy(product, counts[product.id])) }],
    },
    products,
    stores: [],
    prices: [],
    install: {
      name: 'Tarnwick Aquarium Club', mode: 'club', currency: 'USD', country: 'US', timeZone: 'America/New_York', units: METRIC, contact: '555-0100', paper: 'a4',
      energyPriceMinor: 17, circuitVoltageV: 120, circuitCurrentA: 15,
    }, // prettier-ignore
    asOf: '2026-11-01',
  }
}
