import { useMutation } from '@tanstack/react-query'
import { addDays } from '../../../core/dates.ts'
import { getQuote } from '../client/quotes.ts'
import type { Flush } from './autosave.ts'
import { useDesk } from './desk-context.ts'
import { STANDS_DAYS } from './desk-acts.tsx'

/** Takes the draft to the prices of this very moment and gives it a new last day; what was issued stays as it is. Throws where the draft cannot be saved. */
export function useRequote(flush: Flush, done: () => void) {
  const { state, act, edit } = useDesk()
  return useMutation({
    mutationFn: async () => {
      if ((await flush()) === null) throw new Error('The draft is not saved yet; what is wrong is said at the top of the desk.')
      return (await getQuote(state.view.id)).value
    },
    onSuccess: (view) => {
      act({ type: 'reloaded', view })
      edit({ do: 'stands_until', date: addDays(view.asOf, STANDS_DAYS) })
      done()
    },
  })
}
