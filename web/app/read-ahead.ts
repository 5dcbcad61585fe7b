import { useQueryClient } from '@tanstack/react-query'
import { useRouter } from '@tanstack/react-router'
import { useEffect } from 'react'
import { preloadProductPicker } from './parts/product-picker.tsx'
import { pickedQuery } from './parts/picked-query.ts'
import { startWorker } from './offline/start-worker.ts'
import { whenIdle } from './parts/when-idle.ts'
import { boardQuery } from './prices/board-query.ts'
import { storesQuery } from './stores/stores-query.ts'

/** The screens of a store aisle. */
const AISLE = ['/post', '/prices', '/prices/$productId'] as const

/** After the sign-in, once the first screen stands: reads what posting and looking up need, so that both still open without a signal. */
export function useReadAhead(personId: string | undefined): void {
  const router = useRouter()
  const queries = useQueryClient()
  useEffect(() => {
    if (personId === undefined) return
    return whenIdle(() => {
      const parts = AISLE.map(async (path) => router.loadRouteChunk(router.routesByPath[path]))
      preloadProductPicker()
      // Once the parts are loaded, the worker learns their names and keeps them; a browser that refuses a worker loses only that.
      void Promise.allSettled(parts)
        .then(startWorker)
        .catch(() => undefined)
      void queries.prefetchQuery(storesQuery)
      void queries.prefetchQuery(boardQuery())
      void queries.prefetchQuery(pickedQuery({ typed: '' }))
    })
  }, [personId, queries, router])
}
