import type { Verdict } from './finding.ts'

/**
 * A value that must be at least a limit, and comfortably so by a band.
 *
 * @example judgeAtLeast(110, 100, 25) // 'marginal': reached, within 25 of it
 */
export function judgeAtLeast(value: number, limit: number, band: number): Verdict {
  if (value < limit) return 'does_not_fit'
  return value < limit + band ? 'marginal' : 'fits'
}

/** A value that must be at most a limit. @example judgeAtMost(31.5, 32, 1) // 'marginal' */
export function judgeAtMost(value: number, limit: number, band: number): Verdict {
  if (value > limit) return 'does_not_fit'
  return value > limit - band ? 'marginal' : 'fits'
}

/**
 * One verdict from the two ends of what is not stated: the verdict where both agree, else *not known*.
 *
 * @example settle('fits', 'marginal') // 'not_known'
 */
export const settle = (worst: Verdict, best: Verdict): Verdict => (worst === best ? worst : 'not_known')

/** The worse of several verdicts that are all known; *not known* only if nothing is beyond its limit. @example worstOf(['fits', 'marginal']) // 'marginal' */
export function worstOf(verdicts: Verdict[]): Verdict {
  for (const verdict of ['does_not_fit', 'not_known', 'marginal'] as const) if (verdicts.includes(verdict)) return verdict
  return 'fits'
}

/** The best of several that are known. @example bestOf(['does_not_fit', 'marginal']) // 'marginal' */
export const bestOf = (verdicts: readonly Verdict[]): Verdict =>
  (['fits', 'marginal'] as const).find((verdict) => verdicts.includes(verdict)) ?? 'does_not_fit'
