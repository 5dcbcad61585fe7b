import { useEffect } from 'react'
import { openFolds } from './open-folds.ts'
import { shortcutOf } from './shortcuts.ts'

const TYPED_INTO = 'input:not([type="radio"], [type="checkbox"]), textarea, select, [contenteditable]'

/** Presses the desk's buttons by their letters; never while something is typed or a dialog is open. */
export function useShortcuts(on: boolean): void {
  useEffect(() => {
    if (!on) return
    const press = (event: KeyboardEvent): void => {
      const letter = event.defaultPrevented ? null : shortcutOf(event)
      if (letter === null || document.querySelector('dialog[open]')) return
      if (event.target instanceof Element && event.target.closest(TYPED_INTO)) return
      const button = document.querySelector<HTMLElement>(`main [aria-keyshortcuts="${letter}"]`)
      if (!button) return
      event.preventDefault()
      openFolds(button)
      button.focus()
      // A field is only gone to: it is answered by its own keys.
      if (!(button instanceof HTMLSelectElement)) button.click()
    }
    document.addEventListener('keydown', press)
    return () => document.removeEventListener('keydown', press)
  }, [on])
}
