import type { Quantity } from '../units/quantity.ts'
import { quantity } from '../units/quantity.ts'
import { CHECK_FACTS } from './check-facts.ts'
import type { CautionName } from './finding-cautions.ts'
import type { Check, Finding, Limit } from './finding.ts'

/** What a rule says of its check; the rest follows from the check, the value and the limit. */
export type FindingParts = Pick<Finding, 'verdict' | 'reason' | 'source'> &
  Partial<Omit<Finding, 'check' | 'title' | 'hurtRank' | 'margin' | 'caution'>> & { caution?: CautionName }

/** Puts a finding together: title, rank and margin follow from the check, the value and the limit. */
export function makeFinding(check: Check, parts: FindingParts): Finding {
  const { title, hurtRank } = CHECK_FACTS[check]
  const margin = parts.value && parts.limit ? marginOf(parts.value, parts.limit) : undefined
  return { check, title, hurtRank, action: null, assumed: [], missing: [], ...(margin ? { margin } : {}), ...parts }
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
