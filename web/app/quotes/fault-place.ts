import type { QuoteDraft } from '../../../core/quote/draft.ts'
import { openFolds } from './open-folds.ts'

/** Where on the desk a fault is put right. */
export type FaultPlace =
  | { at: 'field'; field: DeskField; words: string }
  | { at: 'tank'; buildId: string; words: string }
  | { at: 'stores'; words: string }
  | { at: 'customer'; words: string }

/** Fields of the quote that stand on the desk itself, marked there with `data-quote-field`. */
const FIELDS = {
  title: 'the title',
  standsUntil: 'the last day',
  'suggestion.reason': 'the reason of the suggestion',
  discount: 'the discount',
  'discount.reason': 'the reason of the discount',
} as const
export type DeskField = keyof typeof FIELDS
const isDeskField = (field: string): field is DeskField => field in FIELDS

/**
 * Where a fault that the rules of issuing name is put right; null where there is no one place for it.
 *
 * @example placeOfFault('builds.1.lines', draft) // { at: 'tank', buildId: '…', words: 'the tank of build B' }
 */
export function placeOfFault(field: string, { builds }: Pick<QuoteDraft, 'builds'>): FaultPlace | null {
  const name = field.replace(/^draft\./, '')
  if (isDeskField(name)) return { at: 'field', field: name, words: FIELDS[name] }
  if (name === 'ownStore') return { at: 'stores', words: 'the stores' }
  if (name === 'customerId') return { at: 'customer', words: 'the customer' }
  const index = Number(/^builds\.(\d+)\./.exec(`${name}.`)?.[1] ?? Number.NaN)
  const build = builds[index]
  return build ? { at: 'tank', buildId: build.id, words: `the tank of build ${'ABCD'.charAt(index)}` } : null
}

/** Puts the focus on a field of the desk, opening whatever folds it away; false where it is not there. */
export function focusDeskField(field: DeskField): boolean {
  const place = document.querySelector<HTMLElement>(`[data-quote-field="${field}"]`)
  const entry = place?.querySelector<HTMLElement>('input, select')
  if (!place || !entry) return false
  openFolds(place)
  entry.focus()
  place.scrollIntoView({ block: 'center' })
  return true
}
