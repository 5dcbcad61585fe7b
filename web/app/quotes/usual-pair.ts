import type { WorkedBuild } from '../../../core/quote/revision.ts'

type Ranked = Pick<WorkedBuild, 'id' | 'suggested'> & { cost: Pick<WorkedBuild['cost'], 'today'> }

/**
 * Which two of three builds or more are shown first: two that the comparison with the cheapest of today says nothing of, the suggested one first among them.
 *
 * @example usualPair([suggestedA, cheapestB, c]) // [suggestedA, c]
 */
export function usualPair<Build extends Ranked>(priced: readonly Build[]): readonly [Build, Build] {
  const ranked = priced.toSorted((a, b) => totalOf(a) - totalOf(b))
  const rest = ranked.slice(1).toSorted((a, b) => Number(b.suggested) - Number(a.suggested))
  const [one, other] = rest
  if (!one || !other) throw new RangeError('Two builds are compared with the cheapest, three or more with each other')
  return [one, other]
}

const totalOf = ({ cost: { today } }: Ranked): number => (today.complete ? today.totalMinor : Infinity)
