export interface KeptDocuments {
  get(key: string): Uint8Array | undefined
  put(key: string, bytes: Uint8Array): void
}

/**
 * Documents asked for lately, in memory, bounded by their bytes: the one that was not asked for the longest goes first. One larger than all the
 * room is not kept.
 *
 * @example const kept = keptDocuments(10); kept.put('a', new Uint8Array(6)); kept.put('b', new Uint8Array(6)); kept.get('a') // undefined
 */
export function keptDocuments(mostBytes: number): KeptDocuments {
  const kept = new Map<string, Uint8Array>()
  let bytes = 0
  const drop = (key: string): void => {
    bytes -= kept.get(key)?.length ?? 0
    kept.delete(key)
  }
  return {
    get(key) {
      const found = kept.get(key)
      if (found === undefined) return undefined
      kept.delete(key)
      kept.set(key, found)
      return found
    },
    put(key, document) {
      drop(key)
      if (document.length > mostBytes) return
      kept.set(key, document)
      bytes += document.length
      for (const oldest of kept.keys()) {
        if (bytes <= mostBytes) return
        drop(oldest)
      }
    },
  }
}
