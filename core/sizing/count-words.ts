import { VERDICTS, type Finding, type Verdict } from './finding.ts'
import type { SizingReport } from './report.ts'

/** So many checks with one verdict, or the floor in its own words. */
export interface VerdictCount {
  verdict: Verdict
  words: string
}

const COUNT_WORDS: Record<Verdict, (count: number) => string> = {
  does_not_fit: (count) => (count === 1 ? '1 does not fit' : `${count} do not fit`),
  not_known: (count) => `${count} not known`,
  marginal: (count) => `${count} marginal`,
  fits: (count) => (count === 1 ? '1 fits' : `${count} fit`),
}

const sayFloor = (floor: Finding): VerdictCount => ({ verdict: signOf(floor), words: `floor: ${floor.wording ?? ''}` })

/** The vial that stands beside a finding's words: that of the nearest verdict where the floor has its own. @example signOf(floorWithinItsAllowance) // 'fits' */
export const signOf = ({ verdict, wording }: Pick<Finding, 'verdict' | 'wording'>): Verdict =>
  wording === 'within the usual allowance' ? 'fits' : verdict

/** Whether the floor's own words send the reader to somebody before the tank is placed. @example mustAsk({ wording: 'ask before you place it' }) // true */
export const mustAsk = ({ wording }: Pick<Finding, 'wording'>): boolean => wording !== undefined && wording !== 'within the usual allowance'

/**
 * How many checks came out how, worst first, for screen and paper alike. The floor is in none of the counts and has a line in its own words, for it is never
 * an approval: before them where somebody is to be asked, after them within its usual allowance.
 *
 * Fits that rest on what is assumed are told beside them.
 *
 * @example sayCounts(report).map(({ words }) => words) // ['2 marginal', '21 fit, 14 assumed', 'floor: within the usual allowance']
 */
export function sayCounts({ findings }: Pick<SizingReport, 'findings'>): VerdictCount[] {
  const told = VERDICTS.flatMap((verdict) => {
    const counted = findings.filter((finding) => finding.verdict === verdict && finding.wording === undefined)
    const resting = verdict === 'fits' ? counted.filter(({ assumed }) => assumed.length > 0).length : 0
    const words = COUNT_WORDS[verdict](counted.length) + (resting > 0 ? `, ${resting} assumed` : '')
    return counted.length > 0 ? [{ verdict, words }] : []
  })
  const floors = findings.filter(({ wording }) => wording !== undefined)
  const [within, toAsk] = [floors.filter((floor) => !mustAsk(floor)), floors.filter(mustAsk)]
  return [...toAsk.map(sayFloor), ...told, ...within.map(sayFloor)]
}
