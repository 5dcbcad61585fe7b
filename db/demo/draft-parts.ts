import type { Slot } from '../../core/catalog/kinds.ts'
import type { Build, BuildLine } from '../../core/quote/draft.ts'
import { CATALOG } from './catalog.ts'
import { STORES } from './stores.ts'

type Unnumbered = BuildLine extends infer Line ? (Line extends BuildLine ? Omit<Line, 'id'> : never) : never

/** A product by its name, bought where the build costs least on the day. Errors: throws for a name that is not in the catalog. */
export function buy(name: string, quantity = 1): Unnumbered {
  const found = CATALOG.find(({ product }) => product.name === name)
  if (!found) throw new Error(`The scenario has no product called ${name}.`)
  return { answer: 'buy', productId: found.product.id, quantity, storeId: null, note: '' }
}

export const owned = (slot: Slot, description: string): Unnumbered => ({
  answer: 'owned',
  slot,
  productId: null,
  description,
  quantity: 1,
  spec: null,
})

export const notNeeded = (slot: Slot, reason: string): Unnumbered => ({ answer: 'not_needed', slot, reason })

/** Ids of stores by their names. Errors: throws for a name that no store has. */
export const storesNamed = (...names: string[]): string[] =>
  names.map((name) => {
    const found = STORES.find(({ store }) => store.name === name)
    if (!found) throw new Error(`The scenario has no store called ${name}.`)
    return found.store.id
  })

/** Lines are numbered in their order, so that the same scenario has the same ids. */
export const build = (id: string, name: string, why: string, lines: Unnumbered[]): Build => ({
  id,
  name,
  why,
  lines: lines.map((line, index) => ({ ...line, id: `${id}-${index + 1}` })),
})
