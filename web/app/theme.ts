export const THEMES = ['light', 'dark', 'auto'] as const
export type Theme = (typeof THEMES)[number]

const KEY = 'driploop.theme'

/** The look this browser keeps; "auto" follows the device. Storage that is switched off counts as "auto". */
export function readTheme(): Theme {
  try {
    const kept = localStorage.getItem(KEY)
    return THEMES.find((theme) => theme === kept) ?? 'auto'
  } catch {
    return 'auto'
  }
}

export function keepTheme(theme: Theme): void {
  try {
    localStorage.setItem(KEY, theme)
  } catch {
    // Private windows may refuse storage: the choice then lasts as long as the page.
  }
}

/** Sets the attribute that tokens.css reads. */
export function applyTheme(theme: Theme): void {
  if (theme === 'auto') delete document.documentElement.dataset['theme']
  else document.documentElement.dataset['theme'] = theme
}
