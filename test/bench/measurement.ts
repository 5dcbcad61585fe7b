/** One row of bench.json. Rates in `1/s`, times in `ms`; `ratio` is value ÷ baseline. */
export interface Measurement {
  name: string
  value: number
  unit: string
  baseline: number | null
  ratio: number | null
}

/** Median of an odd or even number of figures. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = Math.floor(sorted.length / 2)
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2
}
