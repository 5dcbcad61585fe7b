import { useQuery } from '@tanstack/react-query'
import { getRevision } from '../client/quotes.ts'
import { useDesk } from './desk-context.ts'
import { sameValue } from './same-value.ts'

/** Whether the draft on the screen is the one that was issued last; null where nothing was issued or it is not known yet. */
export function useSameAsIssued(): boolean | null {
  const { view, draft } = useDesk().state
  const revision = view.revisions.at(-1)?.revision
  const issued = useQuery({
    queryKey: ['revision', view.id, revision],
    queryFn: () => getRevision(view.id, revision ?? 1),
    staleTime: Infinity,
    enabled: revision !== undefined,
  })
  return issued.data ? sameValue(issued.data.inputs.draft, draft) : null
}
