/** A stated chance and whether it came so. */
export interface Told {
  chance: number
  came: boolean
}

export interface ReliabilityBin {
  cases: number
  told: number
  came: number
}

/** Cases a bin. */
export const BIN_CASES = 500

/**
 * Told chances in ascending order, in bins of as many cases; what is left over joins the last bin. Each with the mean that was told and the share that came.
 */
export function reliabilityBins(told: readonly Told[], cases = BIN_CASES): ReliabilityBin[] {
  const sorted = told.toSorted((a, b) => a.chance - b.chance)
  const count = Math.max(1, Math.floor(sorted.length / cases))
  return Array.from({ length: count }, (_, index) => {
    const bin = sorted.slice(index * cases, index === count - 1 ? undefined : (index + 1) * cases)
    return {
      cases: bin.length,
      told: bin.reduce((sum, { chance }) => sum + chance, 0) / bin.length,
      came: bin.filter(({ came }) => came).length / bin.length,
    }
  })
}

/** How far the shares that came are from what was told: on average, weighted by cases, and at most. */
export function reliabilityGaps(bins: readonly ReliabilityBin[]): { mean: number; most: number } {
  const cases = bins.reduce((sum, bin) => sum + bin.cases, 0)
  const gap = ({ told, came }: ReliabilityBin): number => Math.abs(told - came)
  return {
    mean: bins.reduce((sum, bin) => sum + gap(bin) * bin.cases, 0) / cases,
    most: bins.reduce((most, bin) => Math.max(most, gap(bin)), 0),
  }
}
