import { useMemo, useSyncExternalStore } from 'react'
import { onUnsentChange, readUnsent, type Unsent } from './unsent.ts'

/** What this device holds for an account, kept current. Read as text, so that a change is seen as one. */
export function useUnsent(personId: string): Unsent[] {
  const kept = useSyncExternalStore(onUnsentChange, () => JSON.stringify(readUnsent(personId)))
  return useMemo(() => JSON.parse(kept) as Unsent[], [kept])
}
