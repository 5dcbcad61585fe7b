/** A single key of the desk: it presses the button, or goes to the field, that carries it (`aria-keyshortcuts`), so that key and button never do two things. */
export interface Shortcut {
  key: string
  words: string
}

/** In the order of the work. Each letter presses the first button on the desk that carries it, or goes to the field. */
export const SHORTCUTS: readonly Shortcut[] = [
  { key: 'N', words: 'next open slot' },
  { key: 'F', words: 'fill the rest' },
  { key: 'K', words: 'copy the build' },
  { key: 'W', words: 'add a build' },
  { key: 'V', words: 'add a service' },
  { key: 'T', words: 'to the discount' },
  { key: 'S', words: 'suggest the build' },
  { key: 'P', words: 'see it on paper' },
  { key: 'I', words: 'issue' },
]

/** Keys that move and answer: active on what has the focus alone, so they are never off. */
export const MOVES: readonly Shortcut[] = [
  { key: 'Arrows', words: 'from slot to slot' },
  { key: 'Enter', words: 'open a slot; in its list, take and go on' },
  { key: 'Esc', words: 'leave the slot' },
]

interface Pressed {
  key: string
  ctrlKey: boolean
  metaKey: boolean
  altKey: boolean
  isComposing: boolean
}

/**
 * The shortcut that a key press means; null where it means none. Letters of the builds choose one.
 *
 * @example shortcutOf({ key: 'n', ctrlKey: false, metaKey: false, altKey: false, isComposing: false }) // 'N'
 */
export function shortcutOf({ key, ctrlKey, metaKey, altKey, isComposing }: Pressed): string | null {
  if (ctrlKey || metaKey || altKey || isComposing || key.length !== 1) return null
  const letter = key.toUpperCase()
  return 'ABCD'.includes(letter) || SHORTCUTS.some((one) => one.key === letter) ? letter : null
}

const KEY = 'driploop.single-keys'

/** Whether single keys are on in this browser; storage that is switched off counts as on. */
export function readSingleKeys(storage: Pick<Storage, 'getItem'>): boolean {
  try {
    return storage.getItem(KEY) !== 'off'
  } catch {
    return true
  }
}

export function keepSingleKeys(storage: Pick<Storage, 'setItem'>, on: boolean): void {
  try {
    storage.setItem(KEY, on ? 'on' : 'off')
  } catch {
    // Private windows may refuse storage: the choice then lasts as long as the page.
  }
}
