import { MutationCache, QueryCache, QueryClient } from '@tanstack/react-query'
import { problemOf } from './problem.ts'

/** A session that ended is read anew, which leads to the sign-in. */
function onError(error: unknown): void {
  if (problemOf(error).status === 401) void queryClient.invalidateQueries({ queryKey: ['session'] })
}

/** What was read stays at hand for an afternoon along the shelves, where nothing may be read anew. */
const KEPT_MS = 4 * 60 * 60_000

export const queryClient: QueryClient = new QueryClient({
  queryCache: new QueryCache({ onError }),
  mutationCache: new MutationCache({ onError }),
  defaultOptions: {
    queries: {
      // A refusal stays a refusal: only what may pass by itself is asked again, once.
      retry: (count, error) => count < 1 && [0, 502, 503, 504].includes(problemOf(error).status),
      staleTime: 15_000,
      gcTime: KEPT_MS,
      // Off unless stated where the network mode is "always": a signal that returns makes a screen current by itself.
      refetchOnReconnect: true,
      refetchOnWindowFocus: true,
      networkMode: 'always',
    },
    mutations: { networkMode: 'always' },
  },
})
