import { useDesk } from './desk-context.ts'
import { reasonFor } from './suggestion-reason.ts'

export const REASON_ID = 'suggestion-reason'

/** Marks a build "we suggest" with a first reason from the figures, and goes on to the reason, to be written over. What was written by hand stays. */
export function useSuggest(): (buildId: string) => void {
  const { state, builds, edit } = useDesk()
  const { suggestion, need } = state.draft
  return (buildId) => {
    const own = suggestion !== null && suggestion.reason !== reasonFor(builds, suggestion.buildId, need.budgetMinor)
    const reason = own && suggestion.reason !== '' ? suggestion.reason : reasonFor(builds, buildId, need.budgetMinor)
    edit({ do: 'suggest', suggestion: { buildId, reason } })
    requestAnimationFrame(() => {
      const field = document.querySelector<HTMLInputElement>(`.${REASON_ID} input`)
      field?.focus()
      field?.select()
    })
  }
}
