import type { Problem } from '../client/problem.ts'
import type { SightingBody } from '../client/sightings.ts'

/** A sighting this phone holds until the server has it. Its id makes every repeat harmless. */
export interface Unsent {
  sighting: SightingBody
  /** As the list shows it without the catalog at hand. */
  productName: string
  storeName: string
  /** ISO 8601 UTC. */
  keptAt: string
  /** What the server said against it; null while it only waits. */
  refused: Pick<Problem, 'title' | 'detail' | 'errors'> | null
}

/** What the queue needs of the browser's storage; tests give a map. */
export interface Keep {
  getItem(key: string): string | null
  setItem(key: string, value: string): void
  removeItem(key: string): void
}

/** One queue an account: an expired session keeps it, another person never sees it. */
const keyOf = (personId: string): string => `driploop.unsent.${personId}`

const isUnsent = (item: unknown): item is Unsent =>
  typeof item === 'object' &&
  item !== null &&
  'sighting' in item &&
  typeof (item as Unsent).sighting?.id === 'string' &&
  typeof (item as Unsent).keptAt === 'string'

/** Oldest first. What cannot be read is left out rather than taking the readable rest with it. */
export function readUnsent(personId: string, keep: Keep = localStorage): Unsent[] {
  try {
    const kept: unknown = JSON.parse(keep.getItem(keyOf(personId)) ?? '[]')
    return Array.isArray(kept) ? kept.filter(isUnsent) : []
  } catch {
    return []
  }
}

const listeners = new Set<() => void>()
const tellAll = (): void => {
  for (const listener of listeners) listener()
}
/** Called after every change of any queue, on this page or on another one of the same browser. */
export function onUnsentChange(listener: () => void): () => void {
  if (listeners.size === 0 && typeof window !== 'undefined') window.addEventListener('storage', tellAll)
  listeners.add(listener)
  return () => {
    listeners.delete(listener)
    if (listeners.size === 0 && typeof window !== 'undefined') window.removeEventListener('storage', tellAll)
  }
}

function write(personId: string, items: Unsent[], keep: Keep): void {
  if (items.length === 0) keep.removeItem(keyOf(personId))
  else keep.setItem(keyOf(personId), JSON.stringify(items))
  tellAll()
}

/** Adds one, or replaces the one with its id. Throws where the browser refuses to store: then nothing may be called kept. */
export function keepUnsent(personId: string, item: Unsent, keep: Keep = localStorage): void {
  const others = readUnsent(personId, keep).filter(({ sighting }) => sighting.id !== item.sighting.id)
  write(personId, [...others, item], keep)
}

export function dropUnsent(personId: string, id: string, keep: Keep = localStorage): void {
  write(
    personId,
    readUnsent(personId, keep).filter(({ sighting }) => sighting.id !== id),
    keep,
  )
}

export const discardAllUnsent = (personId: string, keep: Keep = localStorage): void => write(personId, [], keep)
