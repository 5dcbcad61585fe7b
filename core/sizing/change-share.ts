import type { Finding } from './finding.ts'

/** Changed at once where nobody said how much. Common practice. */
export const USUAL_CHANGE_PERCENT = 25
/** More than this of the water at once is hard on animals. Own. */
export const EASY_PERCENT = 50
/** Beyond four fifths changed at once, no water is left to keep animals in. Own. */
export const MOST_PERCENT = 80
/** A stated share is given so many times a week at most; where more would be needed, a larger one is asked for. Own. */
const MOST_STATED = 3

/** Water changes of a week: how many, and how much of the water each. */
export interface WeekOfChanges {
  count: number
  percent: number
  /** Not even two of the most that animals bear keep up with what is fed. */
  tooLittle?: true
}

/**
 * How a week's water is changed: the usual or stated share where the weekly-change finding asks no more, else what that asks for, in two where it is more than half. More than two
 * of four fifths is not asked of anybody: that much, and `tooLittle`.
 *
 * Units:  percent. Source: own, from the finding; a quarter where it is not known (common practice).
 *
 * @example changesOf(finding) // { count: 2, percent: 34 } where it asks for 68 % a week
 */
export function changesOf(finding: Pick<Finding, 'verdict' | 'value'> | undefined, statedPercent?: number): WeekOfChanges {
  const usual = statedPercent ?? USUAL_CHANGE_PERCENT
  const asked = finding === undefined || finding.verdict === 'not_known' ? 0 : (finding.value?.value ?? 0)
  if (asked > 2 * MOST_PERCENT) return { count: 2, percent: MOST_PERCENT, tooLittle: true }
  if (asked <= usual) return { count: 1, percent: usual }
  if (statedPercent !== undefined && asked <= MOST_STATED * statedPercent)
    return { count: Math.ceil(asked / statedPercent), percent: statedPercent }
  return asked > EASY_PERCENT ? { count: 2, percent: asked / 2 } : { count: 1, percent: asked }
}
