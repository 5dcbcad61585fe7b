import { phrase, quantity, type Phrase, type Quantity } from '../units/quantity.ts'
import type { SizingSubject } from './report.ts'
import { exactly, sumOf, type Span } from './span.ts'

/** Body mass over the cube of the length when grown, g/cm³: slender to stout fish. Length–weight relations of fish run so (Froese 2006, from memory). */
const G_PER_CM3: Span = { low: 0.008, high: 0.02 }
/** Dry feed a day of grown fish, share of the body's mass. Common practice. */
const FEED_SHARE: Span = { low: 0.005, high: 0.02 }

/** Dry feed a day, g, and whose it is. */
export interface StockFeed {
  grams: Span
  /** "A usual stock" or "What is chosen here". */
  who: 'group' | 'animals'
  assumed: string
}

/** Dry feed a day of one grown animal, g. @example feedOfAnimal(50) // { low: 0.005, high: 0.05 } */
export const feedOfAnimal = (adultLengthMm: number): Span => {
  const cubed = (adultLengthMm / 10) ** 3
  return { low: cubed * G_PER_CM3.low * FEED_SHARE.low, high: cubed * G_PER_CM3.high * FEED_SHARE.high }
}

/**
 * What the stock eats a day when it is grown: the animals of the build where each states its length, else a usual stock of the group.
 *
 * Units: g of dry feed a day.
 *
 * @example stockFeed({ gear, conditions }).grams // { low: 1, high: 1 } for a small tropical community that nobody listed
 */
export function stockFeed({ gear, conditions }: SizingSubject): StockFeed {
  const animals = gear.animals ?? []
  const eaten = animals.map(({ spec, quantity: count }) => {
    if (spec.adultLengthMm === undefined) return undefined
    const { low, high } = feedOfAnimal(spec.adultLengthMm)
    return { low: low * count, high: high * count }
  })
  const known = eaten.filter((span) => span !== undefined)
  if (known.length === 0 || known.length < eaten.length)
    return { grams: exactly(conditions.livestock.feedGramsPerDay), who: 'group', assumed: 'feed a day of the group' }
  return { grams: sumOf(known), who: 'animals', assumed: 'feed a day by the size of the animals' }
}

/** Feed as it is told: a shrimp's share of a gram to two digits. */
export const feedGrams = (value: number): Quantity => quantity(value, 'g', value < 1 ? 2 : 1)

/** @example feedWords(stock) // 'A usual stock eats 1.0 g of dry feed a day' */
export function feedWords({ grams, who }: StockFeed): Phrase {
  const [low, high] = [feedGrams(grams.low), feedGrams(grams.high)]
  const eaten = low.value === high.value ? phrase`${high}` : phrase`${low} to ${high}`
  return who === 'group'
    ? phrase`A usual stock eats ${eaten} of dry feed a day`
    : phrase`Grown, the animals chosen here eat ${eaten} of dry feed a day`
}
