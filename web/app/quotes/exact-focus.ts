import type { ExactKey } from './exact-fields.ts'
import { openFolds } from './open-folds.ts'

/** What is asked for until something else is known: joists only of a floor that has them. */
const BEFORE: Partial<Record<ExactKey, ExactKey>> = { joistSpanMm: 'floor' }

/** Puts the focus on a question of the need, opening whatever folds it away; false where it is not asked. */
export function focusExact(key: ExactKey): boolean {
  const place = document.querySelector<HTMLElement>(`[data-exact="${key}"]`)
  const entry = place?.querySelector<HTMLElement>('input:checked, select, input:not([type="checkbox"]), input')
  if (!place || !entry) return BEFORE[key] !== undefined && focusExact(BEFORE[key])
  openFolds(place)
  entry.focus()
  place.scrollIntoView({ block: 'center' })
  return true
}
