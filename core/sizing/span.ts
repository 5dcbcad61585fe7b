/** A figure known only to lie between two ends; both are the same where it is stated. */
export interface Span {
  low: number
  high: number
}

export const exactly = (value: number): Span => ({ low: value, high: value })
export const isExact = (span: Span): boolean => span.low === span.high
/** Both ends of a span, so many times. @example times({ low: 1, high: 2 }, 3) // { low: 3, high: 6 } */
export const times = (span: Span, factor: number): Span => ({ low: span.low * factor, high: span.high * factor })

/** @example middle({ low: 1, high: 3 }) // 2 */
export const middle = ({ low, high }: Span): number => (low + high) / 2

/** A figure as it is kept and drawn: the last bit of an engine's `exp` reaches no comparison and no stored document. @example round(1.25, 1) // 1.3 */
export const round = (value: number, digits: number): number => Math.round(value * 10 ** digits) / 10 ** digits

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
