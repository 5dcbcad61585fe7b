import { useMutation, useQueryClient, type UseMutationResult } from '@tanstack/react-query'
import { getSession, type Session } from '../client/session.ts'
import { sessionQuery } from '../session/session.ts'

/** Proves who one is, then reads the session that came of it. Whatever the signed-out page had read is forgotten first. */
export function useEntering(prove: () => Promise<unknown>, go: (session: Session) => void): UseMutationResult<Session, Error, void> {
  const queries = useQueryClient()
  return useMutation({
    mutationFn: async () => {
      await prove()
      return getSession()
    },
    onSuccess: (session) => {
      queries.clear()
      queries.setQueryData(sessionQuery.queryKey, session)
      go(session)
    },
  })
}
