import { useQueryClient } from '@tanstack/react-query'
import { useEffect, useSyncExternalStore } from 'react'
import { readPricesAnew } from '../prices/read-anew.ts'
import { onUnsentChange, readUnsent } from './unsent.ts'
import { sendUnsent } from './send-unsent.ts'

/** A signal that comes back without the browser noticing is found within this; often enough for a store aisle, seldom enough for a battery. */
const AGAIN_MS = 30_000

/** How many sightings of this account the device still holds, waiting or refused. */
export function useUnsentCount(personId: string): number {
  return useSyncExternalStore(onUnsentChange, () => readUnsent(personId).length)
}

/** Sends what this device holds: at once, when the signal returns, when the page is looked at again, and every half minute while some wait. */
export function UnsentSender({ personId }: { personId: string }): null {
  const count = useUnsentCount(personId)
  const queries = useQueryClient()
  useEffect(() => {
    const send = async (): Promise<void> => {
      if (!readUnsent(personId).some(({ refused }) => refused === null)) return
      const outcomes = await sendUnsent(personId)
      if ([...outcomes.values()].some(({ kind }) => kind === 'posted')) {
        await readPricesAnew(queries)
      }
    }
    const go = (): void => void send()
    go()
    const timer = count > 0 ? setInterval(go, AGAIN_MS) : undefined
    window.addEventListener('online', go)
    document.addEventListener('visibilitychange', go)
    return () => {
      clearInterval(timer)
      window.removeEventListener('online', go)
      document.removeEventListener('visibilitychange', go)
    }
  }, [personId, count, queries])
  return null
}
