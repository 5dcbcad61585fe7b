/** How a discount or a deposit is stated. */
export const TERM_KINDS = [
  { value: 'amount', label: 'an amount' },
  { value: 'share', label: 'a share, in per cent' },
] as const

/** Hundredths of a per cent in a per cent. */
export const PER_CENT = 100

/** A share is kept in steps of a ten-thousandth of a per cent. @example toBasisPoints(12.5) // 1250 */
export const toBasisPoints = (percent: number | null): number => Math.round((percent ?? 0) * PER_CENT * 100) / 100
