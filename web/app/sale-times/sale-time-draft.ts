import type { CivilDate } from '../../../core/dates.ts'
import { yearlyDayOf, yearlyRule } from '../../../core/pricing/sale-time-words.ts'
import type { SaleTime, SaleTimeRule } from '../../../core/pricing/sale-time.ts'
import type { SaleTimeBody } from '../client/sale-times.ts'

/** How the first day is said on the screen; "yearly" is kept as a calendar rule. */
export type Way = 'holiday' | 'yearly' | 'dates' | 'rule'

/** A sale time as it is typed. */
export interface SaleTimeDraft {
  name: string
  way: Way
  holiday: string
  offsetDays: string
  /** A day whose month and day come again each year. */
  yearly: CivilDate
  firstDays: string
  rule: string
  ruleFrom: CivilDate
  lengthDays: string
  everywhere: boolean
  storeIds: string[]
  note: string
}

export const emptyDraft = (today: CivilDate): SaleTimeDraft => ({
  name: '',
  way: 'holiday',
  holiday: '',
  offsetDays: '0',
  yearly: today,
  firstDays: '',
  rule: 'FREQ=YEARLY;BYMONTH=6;BYDAY=1SA',
  ruleFrom: `${today.slice(0, 4)}-01-01`,
  lengthDays: '7',
  everywhere: true,
  storeIds: [],
  note: '',
})

/** What is stored, as it was typed. */
export function draftOf({ name, when, lengthDays, storeIds, note }: SaleTime, today: CivilDate): SaleTimeDraft {
  const draft = {
    ...emptyDraft(today),
    name,
    lengthDays: String(lengthDays),
    everywhere: storeIds.length === 0,
    storeIds,
    note: note ?? '',
  }
  if (when.kind === 'holiday') return { ...draft, way: 'holiday', holiday: when.holiday, offsetDays: String(when.offsetDays) }
  if (when.kind === 'dates') return { ...draft, way: 'dates', firstDays: when.firstDays.join(', ') }
  const yearly = yearlyDayOf(when)
  if (yearly !== null) return { ...draft, way: 'yearly', yearly: `${today.slice(0, 4)}-${yearly}`, ruleFrom: when.from }
  return { ...draft, way: 'rule', rule: when.rule, ruleFrom: when.from }
}

/** A text that is no number stays one for the server to refuse at its field. */
const numberOf = (text: string): number => Number(text.trim().replace('\u2212', '-') || Number.NaN)

function whenOf({ way, holiday, offsetDays, yearly, firstDays, rule, ruleFrom }: SaleTimeDraft): SaleTimeRule {
  if (way === 'holiday') return { kind: 'holiday', holiday, offsetDays: numberOf(offsetDays) }
  if (way === 'dates') return { kind: 'dates', firstDays: firstDays.split(/[\s,;]+/).filter((day) => day !== '') }
  if (way === 'rule') return { kind: 'rule', rule: rule.trim().toUpperCase(), from: ruleFrom }
  return { kind: 'rule', rule: yearlyRule(yearly.slice(5)), from: ruleFrom }
}

/** What is sent. */
export const bodyOf = (draft: SaleTimeDraft): SaleTimeBody => ({
  name: draft.name,
  when: whenOf(draft),
  lengthDays: numberOf(draft.lengthDays),
  storeIds: draft.everywhere ? [] : draft.storeIds,
  note: draft.note.trim() === '' ? null : draft.note,
})
