import { createContext, useContext, useEffect } from 'react'

/** Puts what a form of the slot's editor holds, then goes on; where something of it is missing it says so at its field and does not go on. */
export type PutAnswer = (then: () => void) => void

/** Takes what is typed in a slot's editor and was not added yet, for the button that closes it; null: nothing is. */
export const HoldAnswer = createContext<(put: PutAnswer | null) => void>(() => {})

/** A form tells that something is `typed` into it: closing then puts it first, so that nothing typed is lost. */
export function usePendingAnswer(typed: boolean, put: PutAnswer): void {
  const hold = useContext(HoldAnswer)
  useEffect(() => {
    hold(typed ? put : null)
    return () => hold(null)
  })
}
