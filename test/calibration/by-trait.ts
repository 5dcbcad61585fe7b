import type { MarketResult } from './measure.ts'
import { uniformDistance } from './statistics/kolmogorov-smirnov.ts'

/** How forecasts of lines with one trait came out: what to look at when an aim is missed. */
export interface TraitRow {
  trait: string
  word: string
  cases: number
  /** Kolmogorov–Smirnov distance, and the mean place, 0.5 where nothing leans. */
  distance: number
  meanPlace: number
  /** Shares of outcomes under the 10 % place and over the 90 % place; 0.1 each where right. */
  under: number
  over: number
  chanceTold: number
  saleCame: number
  /** Loss against the kind's true frequencies. */
  loss: number
  /** Share of the oracle's saving, free and at a cost. */
  savedFree: number
  savedAtCost: number
}

/** One row for every word of every trait, horizons among them. */
export function rowsByTrait(results: readonly MarketResult[]): TraitRow[] {
  const cases = results.flatMap((result) => result.cases.map((each) => ({ ...each, traits: withDays(result, each.line, each.days) })))
  const advice = results.flatMap((result) => result.advice.map((each) => ({ ...each, traits: withDays(result, each.line, each.days) })))
  const traits = [...new Set(cases.flatMap(({ traits }) => Object.entries(traits).map(([trait, word]) => `${trait}\t${word}`)))].sort()
  return traits.map((key): TraitRow => {
    const [trait = '', word = ''] = key.split('\t')
    const some = cases.filter((each) => each.traits[trait] === word)
    const advised = advice.filter((each) => each.traits[trait] === word)
    const share = (hit: (each: (typeof some)[number]) => boolean): number => some.filter(hit).length / some.length
    const mean = (of: (each: (typeof some)[number]) => number): number => some.reduce((sum, each) => sum + of(each), 0) / some.length
    const saved = (free: boolean): number => {
      const which = advised.filter(({ costShare }) => (costShare === 0) === free)
      const against = (way: 'advice' | 'oracle') => which.reduce((sum, { paid }) => sum + paid.buyNow - paid[way], 0)
      return against('advice') / against('oracle')
    }
    return {
      trait,
      word,
      cases: some.length,
      distance: uniformDistance(some.map(({ place }) => place)),
      meanPlace: mean(({ place }) => place),
      under: share(({ place }) => place < 0.1),
      over: share(({ place }) => place > 0.9),
      chanceTold: mean(({ chanceOfSale }) => chanceOfSale),
      saleCame: share(({ saleCame }) => saleCame),
      loss: mean(({ loss }) => loss) / mean(({ lossByKind }) => lossByKind),
      savedFree: saved(true),
      savedAtCost: saved(false),
    }
  })
}

const withDays = (result: MarketResult, line: number, days: number): Record<string, string> => ({
  ...result.traits[line],
  'days ahead': String(days).padStart(3),
})

/** The rows in columns, for a terminal. */
export function sayRows(rows: readonly TraitRow[]): string {
  const head = ['trait', 'cases', 'KS', 'mean', '<10%', '>90%', 'told', 'came', 'loss', 'free', 'cost']
  const cells = rows.map((row) => [
    `${row.trait}: ${row.word}`,
    String(row.cases),
    ...[row.distance, row.meanPlace, row.under, row.over, row.chanceTold, row.saleCame, row.loss, row.savedFree, row.savedAtCost].map(
      (value) => value.toFixed(3),
    ),
  ])
  return [head, ...cells].map(([first = '', ...rest]) => first.padEnd(52) + rest.map((cell) => cell.padStart(8)).join('')).join('\n')
}
