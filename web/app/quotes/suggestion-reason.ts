import { mustAsk } from '../../../core/sizing/count-words.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'

type Judged = Pick<WorkedBuild, 'id' | 'cost' | 'report' | 'rows' | 'drawing'>

const totalOf = ({ cost }: Judged): number | null => (cost.today.complete && cost.lines.length > 0 ? cost.today.totalMinor : null)
const lengthOf = ({ drawing }: Judged): number => drawing?.lengthMm ?? 0
const countOf = ({ report }: Judged, verdict: string): number => report.findings.filter((finding) => finding.verdict === verdict).length

/**
 * A first sentence for why a build is suggested, from the figures alone, and what its floor asks for; the advisor writes over it. Empty where the figures say nothing for it.
 *
 * @example reasonFor(builds, 'b', 115000) // 'It costs least today, is within the budget, and no part of it fails a check.'
 */
export function reasonFor(builds: readonly Judged[], buildId: string, budgetMinor: number | null): string {
  const mine = builds.find((build) => build.id === buildId)
  if (!mine) return ''
  const others = builds.filter((build) => build !== mine)
  const total = totalOf(mine)
  const least = others.length > 0 && total !== null && others.every((build) => (totalOf(build) ?? Infinity) > total)
  const longest = others.length > 0 && others.every((build) => lengthOf(build) < lengthOf(mine))
  const says = [
    ...(least ? ['costs least today'] : []),
    ...(longest ? ['has the longest tank'] : []),
    ...(budgetMinor !== null && total !== null && total <= budgetMinor ? ['is within the budget'] : []),
  ]
  const toAsk = mine.report.findings.some(mustAsk)
  const sound = mine.drawing !== null && !toAsk && countOf(mine, 'does_not_fit') === 0
  const floor = toAsk ? FLOOR_TO_ASK : ''
  if (says.length === 0) return sound ? 'No part of it fails a check.' : floor
  const list = says.length > 1 && !sound ? `${says.slice(0, -1).join(', ')} and ${says.at(-1)}` : says.join(', ')
  return `It ${list}${sound ? ', and no part of it fails a check' : ''}.${floor && ` ${floor}`}`
}

/** Nobody is to suggest a build as sound whose floor nobody has judged. */
const FLOOR_TO_ASK = 'Its floor asks for an engineer first.'
