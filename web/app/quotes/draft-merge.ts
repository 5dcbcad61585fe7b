import type { Build, BuildLine, QuoteDraft } from '../../../core/quote/draft.ts'
import { sameValue } from './same-value.ts'

/** Something that both changed, each otherwise: mine stands, and the screen says so. */
export interface Clash {
  /** "need.budgetMinor", "build:<id>.name", "build:<id>.line:<id>". */
  path: string
  mine: unknown
  theirs: unknown
}

export interface Merged {
  draft: QuoteDraft
  clashes: Clash[]
}

/**
 * Lays my unsaved changes over what a colleague saved meanwhile. What only one of us changed is kept from that one; what both changed stays mine and is
 * listed. A build or line that one removed and the other changed stays. Nothing that either entered is dropped silently.
 *
 * @example mergeDrafts(base, { ...base, title: 'Mine' }, { ...base, note: 'Theirs' }).draft // title "Mine", note "Theirs", no clash
 */
export function mergeDrafts(base: QuoteDraft, mine: QuoteDraft, theirs: QuoteDraft): Merged {
  const clashes: Clash[] = []
  const choose = chooser(clashes)
  const { exact: baseExact, ...baseNeed } = base.need
  const { exact: mineExact, ...mineNeed } = mine.need
  const { exact: theirExact, ...theirNeed } = theirs.need
  const need = {
    ...fields('need', baseNeed, mineNeed, theirNeed, choose),
    exact: fields('need.exact', baseExact, mineExact, theirExact, choose),
  }
  const builds = byId('build', base.builds, mine.builds, theirs.builds, clashes, (path, b, m, t) =>
    mergeBuild(path, b, m, t, choose, clashes),
  )
  const head = fields('draft', headOf(base), headOf(mine), headOf(theirs), choose)
  const suggestion = head.suggestion && builds.some((build) => build.id === head.suggestion?.buildId) ? head.suggestion : null
  return { draft: { ...head, suggestion, need, builds }, clashes }
}

type Choose = <T>(path: string, base: T, mine: T, theirs: T) => T

function chooser(clashes: Clash[]): Choose {
  return (path, base, mine, theirs) => {
    if (sameValue(mine, base)) return theirs
    if (!sameValue(theirs, base) && !sameValue(mine, theirs)) clashes.push({ path, mine, theirs })
    return mine
  }
}

const headOf = (draft: QuoteDraft) => ({
  title: draft.title,
  suggestion: draft.suggestion,
  standsUntil: draft.standsUntil,
  note: draft.note,
})

function fields<T extends object>(path: string, base: T, mine: T, theirs: T, choose: Choose): T {
  const keys = new Set([...Object.keys(base), ...Object.keys(mine), ...Object.keys(theirs)]) as Set<keyof T & string>
  const entries = [...keys].map((key) => [key, choose(`${path}.${key}`, base[key], mine[key], theirs[key])] as const)
  return Object.fromEntries(entries.filter(([, value]) => value !== undefined)) as T
}

function mergeBuild(path: string, base: Build, mine: Build, theirs: Build, choose: Choose, clashes: Clash[]): Build {
  return {
    id: mine.id,
    name: choose(`${path}.name`, base.name, mine.name, theirs.name),
    why: choose(`${path}.why`, base.why, mine.why, theirs.why),
    lines: byId<BuildLine>(`${path}.line`, base.lines, mine.lines, theirs.lines, clashes, choose),
  }
}

/** Their order, then what I added. */
function byId<T extends { id: string }>(
  path: string,
  base: T[],
  mine: T[],
  theirs: T[],
  clashes: Clash[],
  merge: (path: string, base: T, mine: T, theirs: T) => T,
): T[] {
  const find = (list: T[], id: string) => list.find((item) => item.id === id)
  const ids = [...new Set([...theirs.map((item) => item.id), ...mine.map((item) => item.id)])]
  return ids.flatMap((id) => {
    const [b, m, t] = [find(base, id), find(mine, id), find(theirs, id)]
    const at = `${path}:${id}`
    if (m && t) return [merge(at, b ?? t, m, t)]
    const left = m ?? t
    if (!left) return []
    if (!b) return [left]
    if (sameValue(left, b)) return []
    clashes.push({ path: at, mine: m ?? null, theirs: t ?? null })
    return [left]
  })
}
