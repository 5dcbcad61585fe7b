import { isCivilDate } from '../../../core/dates.ts'
import type { SaleTimeDraft } from './sale-time-draft.ts'

/** As the server has them: a sale lasts two months at most, and begins no further from its holiday. */
const MOST_DAYS = 62

const whole = (text: string): number | null => (/^[-\u2212]?\d{1,4}$/.test(text.trim()) ? Number(text.trim().replace('\u2212', '-')) : null)

function beginFaults({ way, holiday, offsetDays, firstDays, rule }: SaleTimeDraft): Record<string, string> {
  if (way === 'dates') {
    const days = firstDays.split(/[\s,;]+/).filter((day) => day !== '')
    const wrong = days.find((day) => !isCivilDate(day))
    if (days.length === 0) return { 'when.firstDays': 'Write at least one day, like 2026-11-27.' }
    return wrong === undefined ? {} : { 'when.firstDays': `“${wrong.slice(0, 20)}” is not a day. Write it like 2026-11-27.` }
  }
  if (way === 'rule') return rule.trim() === '' ? { 'when.rule': 'Write the rule, or choose another way for it to begin.' } : {}
  if (way !== 'holiday') return {}
  const offset = whole(offsetDays)
  return {
    ...(holiday === '' && { 'when.holiday': 'Choose the holiday, or another way for it to begin.' }),
    ...((offset === null || Math.abs(offset) > MOST_DAYS) && {
      'when.offsetDays': `Days after it is a whole number from -${MOST_DAYS} to ${MOST_DAYS}.`,
    }),
  }
}

/**
 * What the form knows to be wrong before anything is sent, by the field that the server would name. Whether a calendar can follow a rule is the server's to say.
 *
 * @example draftFaults({ …, name: '' }) // { name: 'Give the sale time a name.' }
 */
export function draftFaults(draft: SaleTimeDraft): Record<string, string> {
  const length = whole(draft.lengthDays)
  return {
    ...(draft.name.trim() === '' && { name: 'Give the sale time a name.' }),
    ...beginFaults(draft),
    ...((length === null || length < 1 || length > MOST_DAYS) && {
      lengthDays: `Length is a whole number of days from 1 to ${MOST_DAYS}.`,
    }),
  }
}
