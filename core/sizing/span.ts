/** A figure known only to lie between two ends; both are the same where it is stated. */
export interface Span {
  low: number
  high: number
}

export const exactly = (value: number): Span => ({ low: value, high: value })
export const isExact = (span: Span): boolean => span.low === span.high
export const sumOf = (spans: Span[]): Span => ({
  low: spans.reduce((sum, s) => sum + s.low, 0),
  high: spans.reduce((sum, s) => sum + s.high, 0),
})

/** The ends of a figure over several possible cases. @example over([1, 3], (x) => x * 2) // { low: 2, high: 6 } */
export function over<Case>(cases: readonly Case[], figure: (each: Case) => number): Span {
  let low = Infinity
  let high = -Infinity
  for (const each of cases) {
    const value = figure(each)
    if (value < low) low = value
    if (value > high) high = value
  }
  return { low, high }
}
