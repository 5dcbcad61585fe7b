import { useMutation, useQueryClient, type UseMutationResult } from '@tanstack/react-query'
import type { SightingRow } from '../../../core/pricing/record.ts'
import { actOnSighting, type SightingAct } from '../client/sightings.ts'

/** Confirms, disputes or withdraws; every place that shows the sighting is read again. */
export function useSightingAct(): UseMutationResult<SightingRow, Error, { id: string; act: SightingAct }> {
  const queries = useQueryClient()
  return useMutation({
    mutationFn: ({ id, act }: { id: string; act: SightingAct }) => actOnSighting(id, act),
    onSettled: async () => {
      await Promise.all([queries.invalidateQueries({ queryKey: ['board'] }), queries.invalidateQueries({ queryKey: ['record'] })])
    },
  })
}
