import type { Quantity } from '../units/quantity.ts'
import { quantity } from '../units/quantity.ts'
import { hurtRankOf } from './hurt-rank.ts'
import type { CautionName } from './finding-cautions.ts'
import type { Check, Finding, Limit } from './finding.ts'
import type { SourceName } from './sources.ts'

/** What a rule says of its check; the rest follows from the check, the value and the limit. */
export type FindingParts = Pick<Finding, 'verdict' | 'reason'> &
  Partial<Omit<Finding, 'check' | 'hurtRank' | 'margin' | 'caution'>> & { caution?: CautionName }

/** A check without a source of its own name says what it rests on. */
type Sourced<C extends Check> = C extends SourceName ? FindingParts : FindingParts & Pick<Finding, 'source'>

/** Puts a finding together: rank and margin follow from the check, the value and the limit; the source is that of the check's name unless it says another. */
export function makeFinding<C extends Check>(check: C, parts: Sourced<C>): Finding {
  const margin = parts.value && parts.limit ? marginOf(parts.value, parts.limit) : undefined
  return {
    check,
    hurtRank: hurtRankOf(check),
    source: check as SourceName,
    action: null,
    assumed: [],
    missing: [],
    ...(margin ? { margin } : {}),
    ...parts,
  }
}

/** Distance to the nearest limit, negative beyond it. @example marginOf(36.4 °C, at most 32 °C) // −4.4 K */
function marginOf(value: Quantity, limit: Limit): Quantity {
  const below = limit.kind === 'at_least' ? Infinity : limit.high.value - value.value
  const above = limit.kind === 'at_most' ? Infinity : value.value - limit.low.value
  const digits = Math.max(value.digits, ...('low' in limit ? [limit.low.digits] : []), ...('high' in limit ? [limit.high.digits] : []))
  return quantity(Math.min(below, above), value.unit === 'degC' ? 'K' : value.unit, digits)
}

/** Names each only once, in order. @example namesOf(['a'], ['b', 'a']) // ['a', 'b'] */
export function namesOf(...lists: readonly (readonly string[])[]): string[] {
  const names: string[] = []
  for (const list of lists) for (const name of list) if (!names.includes(name)) names.push(name)
  return names
}
