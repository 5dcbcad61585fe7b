import { useSyncExternalStore } from 'react'

/** Whether a media query holds now, followed as it changes. */
export function useMedia(query: string): boolean {
  const subscribe = (changed: () => void): (() => void) => {
    const list = matchMedia(query)
    list.addEventListener('change', changed)
    return () => list.removeEventListener('change', changed)
  }
  return useSyncExternalStore(subscribe, () => matchMedia(query).matches)
}

/** One build at a time below this, as everywhere. */
export const PHONE = '(max-width: 720px)'
/** From here on need, builds and report stand side by side. */
export const WIDE = '(min-width: 1440px)'
