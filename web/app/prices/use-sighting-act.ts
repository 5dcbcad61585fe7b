import { useMutation, useQueryClient, type UseMutationResult } from '@tanstack/react-query'
import type { SightingRow } from '../../../core/pricing/record.ts'
import { actOnSighting, type SightingAct } from '../client/sightings.ts'
import { readPricesAnew } from './read-anew.ts'

/** Confirms, disputes or withdraws; every place that shows the sighting is read again, after `onDone` was told how it stands now. */
export function useSightingAct(
  onDone?: (sighting: SightingRow) => void,
): UseMutationResult<SightingRow, Error, { id: string; act: SightingAct }> {
  const queries = useQueryClient()
  return useMutation({
    mutationFn: ({ id, act }: { id: string; act: SightingAct }) => actOnSighting(id, act),
    onSuccess: (sighting) => onDone?.(sighting),
    onSettled: () => readPricesAnew(queries),
  })
}
