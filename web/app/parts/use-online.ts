import { useSyncExternalStore } from 'react'

function listen(change: () => void): () => void {
  window.addEventListener('online', change)
  window.addEventListener('offline', change)
  return () => {
    window.removeEventListener('online', change)
    window.removeEventListener('offline', change)
  }
}

/** Whether the device says it has a network; the server may still be out of reach. */
export const useOnline = (): boolean => useSyncExternalStore(listen, () => navigator.onLine)
