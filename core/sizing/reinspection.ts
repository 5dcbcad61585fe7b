import { GEAR_RULES, TANK_RULES, type RuleSet } from './engine.ts'
import type { Check, Finding } from './finding.ts'
import { changeOf, touches, watched, type Keys, type Watched } from './reads.ts'
import type { SizingSubject } from './report.ts'
import { situationOf, type Situation } from './situation.ts'

/** Findings that something changed may have moved, by their check: one that is not among them is as it was, or is no more. */
export type Moved = ReadonlyMap<Check, Finding>

/** What changed, where it reaches what a set of rules is given, and that. */
interface Changed<From> {
  at: From
  keys: Keys
  isOther: boolean
}

/**
 * Finds again what another answer or another spec may have moved, for one build in one room: a rule that looked at nothing of what changed is not run again.
 * Undefined where the build has no tank that holds water; null where the changed one has none.
 *
 * Errors: as `sizingReport`. Source: own.
 *
 * @example reinspection(subject)?.({ ...subject, conditions: busier })?.size // 1: more on the circuit moves the load on it alone
 */
export function reinspection(subject: SizingSubject): ((changed: SizingSubject) => Moved | null) | undefined {
  const watch = watched(subject)
  const { made: result, keys: held } = watch.during(() => situationOf(watch.subject))
  if (!result.ok) return undefined
  const gearRules = againOf(GEAR_RULES, watch.subject, watch)
  const tankRules = [
    againOf(TANK_RULES.heat, result.value, watch),
    againOf(TANK_RULES.light, result.value, watch),
    againOf(TANK_RULES.flow, result.value, watch),
    againOf(TANK_RULES.cords, result.value, watch),
    againOf(TANK_RULES.rest, result.value, watch),
  ]
  return (changed) => {
    const keys = changeOf(subject, changed)
    const isOther = touches(held, keys)
    const at = isOther ? tankIn(changed) : { ...result.value, ...changed }
    if (at === null) return null
    const found = [...gearRules({ at: changed, keys, isOther: false }), ...tankRules.flatMap((rules) => rules({ at, keys, isOther }))]
    return new Map(found.map((finding) => [finding.check, finding]))
  }
}

function tankIn(subject: SizingSubject): Situation | null {
  const result = situationOf(subject)
  return result.ok ? result.value : null
}

/** Runs the rules of one set that looked at what changed, and of what they share only what did. */
function againOf<From, Shared>({ share, rules }: RuleSet<From, Shared>, from: From, watch: Watched) {
  const shared = watch.during(() => share(from))
  const run = rules.map((rule) => ({ rule, keys: watch.during(() => rule(from, shared.made)).keys }))
  return ({ at, keys, isOther }: Changed<From>): Finding[] => {
    const isSharedOther = isOther || touches(shared.keys, keys)
    const due = isSharedOther ? run : run.filter((each) => touches(each.keys, keys))
    if (due.length === 0) return []
    const given = isSharedOther ? share(at) : shared.made
    return due.flatMap(({ rule }) => rule(at, given) ?? [])
  }
}
