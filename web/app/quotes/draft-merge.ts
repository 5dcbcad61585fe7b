import type { Slot } from '../../../core/catalog/kinds.ts'
import type { Build, BuildLine, QuoteDraft } from '../../../core/quote/draft.ts'
import { sameValue } from './same-value.ts'

/** Something that both changed, each otherwise: mine stands, and the screen says so. */
export interface Clash {
  /** "need.budgetMinor", "build:<id>.name", "build:<id>.line:<id>", "build:<id>.slot:heat". */
  path: string
  mine: unknown
  theirs: unknown
}

export interface Merged {
  draft: QuoteDraft
  clashes: Clash[]
}

/**
 * Lays my unsaved changes over what was saved meanwhile. What only one side changed is kept from that one; what both changed stays mine and is listed. A
 * build or line that one removed and the other changed stays. A slot that both filled anew is one clash: its lines are mine, never both sides' and both
 * charged. Nothing that either entered is dropped silently.
 *
 * @example mergeDrafts(base, { ...base, title: 'Mine' }, { ...base, note: 'Theirs' }).draft // title "Mine", note "Theirs", no clash
 */
export function mergeDrafts(base: QuoteDraft, mine: QuoteDraft, theirs: QuoteDraft, slotOf: SlotOf = saidSlot): Merged {
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
    mergeBuild(path, { base: b, mine: m, theirs: t }, choose, clashes, slotOf),
  )
  const head = fields('draft', headOf(base), headOf(mine), headOf(theirs), choose)
  const suggestion = head.suggestion && builds.some((build) => build.id === head.suggestion?.buildId) ? head.suggestion : null
  return { draft: { ...head, suggestion, need, builds }, clashes }
}

/** The slot a line speaks for; undefined where its product is not known here. */
export type SlotOf = (line: BuildLine) => Slot | undefined
const saidSlot: SlotOf = (line) => (line.answer === 'buy' ? undefined : line.slot)

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
  units: draft.units,
  discount: draft.discount,
  deposit: draft.deposit,
})

function fields<T extends object>(path: string, base: T, mine: T, theirs: T, choose: Choose): T {
  const keys = new Set([...Object.keys(base), ...Object.keys(mine), ...Object.keys(theirs)]) as Set<keyof T & string>
  const entries = [...keys].map((key) => [key, choose(`${path}.${key}`, base[key], mine[key], theirs[key])] as const)
  return Object.fromEntries(entries.filter(([, value]) => value !== undefined)) as T
}

interface Three<T> {
  base: T
  mine: T
  theirs: T
}

function mergeBuild(path: string, { base, mine, theirs }: Three<Build>, choose: Choose, clashes: Clash[], slotOf: SlotOf): Build {
  const lines = { base: base.lines, mine: mine.lines, theirs: theirs.lines }
  const refilled = refilledSlots(lines, slotOf)
  for (const slot of refilled) {
    const inSlot = (all: BuildLine[]): BuildLine[] => all.filter((line) => slotOf(line) === slot)
    const [kept, other] = [inSlot(mine.lines), inSlot(theirs.lines)]
    if (!sameAnswers(kept, other)) clashes.push({ path: `${path}.slot:${slot}`, mine: kept, theirs: other })
  }
  const isRefilled = (line: BuildLine): boolean => refilled.has(slotOf(line))
  const rest = (all: BuildLine[]): BuildLine[] => all.filter((line) => !isRefilled(line))
  const services = byId(`${path}.service`, base.services ?? [], mine.services ?? [], theirs.services ?? [], clashes, choose)
  return {
    id: mine.id,
    name: choose(`${path}.name`, base.name, mine.name, theirs.name),
    why: choose(`${path}.why`, base.why, mine.why, theirs.why),
    lines: [
      ...byId<BuildLine>(`${path}.line`, rest(lines.base), rest(lines.mine), rest(lines.theirs), clashes, choose),
      ...mine.lines.filter(isRefilled),
    ],
    ...(services.length > 0 ? { services } : {}),
  }
}

const sameAnswers = (some: BuildLine[], others: BuildLine[]): boolean => {
  const said = (lines: BuildLine[]): unknown[] => lines.map((line) => ({ ...line, id: '' }))
  return sameValue(said(some), said(others))
}

/** Slots that both sides changed, one of them by a line the base did not have. Merged line by line they would hold what each side meant to stand alone. */
function refilledSlots(lines: Three<BuildLine[]>, slotOf: SlotOf): Set<Slot | undefined> {
  const known = new Set(lines.base.map((line) => line.id))
  const slots = new Set([...lines.mine, ...lines.theirs].filter((line) => !known.has(line.id)).map(slotOf))
  return new Set(
    [...slots].filter((slot) => {
      if (slot === undefined) return false
      const inSlot = (all: BuildLine[]): BuildLine[] => all.filter((line) => slotOf(line) === slot)
      const base = inSlot(lines.base)
      return !sameAnswers(inSlot(lines.mine), base) && !sameAnswers(inSlot(lines.theirs), base)
    }),
  )
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
