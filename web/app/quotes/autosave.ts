import { useCallback, useEffect, useLayoutEffect, useRef, type Dispatch } from 'react'
import { problemOf, type Problem } from '../client/problem.ts'
import { getQuote, saveQuote } from '../client/quotes.ts'
import { deskReducer, type DeskEvent, type DeskState } from './desk-state.ts'
import { forgetDraft, keepDraft } from './kept-draft.ts'
import { isClosed } from './saving-words.ts'

/** Long enough for a word to be typed, short enough that a customer's change is safe before the next question. */
const QUIET_MS = 700
/** A save that failed for want of a signal is tried again this often. */
const AGAIN_MS = 8_000

/** Saves at once; the version under which the server has what is on the screen, or null where it has not. */
export type Flush = () => Promise<number | null>

interface Saver {
  flush: Flush
  send(): Promise<number | null>
}

/** Saves the draft a moment after the last edit, keeps it in this tab until the server has it, and asks before a page with unsaved changes is left. */
export function useAutosave(quoteId: string, state: DeskState, dispatch: Dispatch<DeskEvent>): Flush {
  const { flush, send } = useSaver(quoteId, state, dispatch)
  useTimedSends(state, send)
  useKeeping(quoteId, state)
  return flush
}

function useSaver(quoteId: string, state: DeskState, dispatch: Dispatch<DeskEvent>): Saver {
  const latest = useRef(state)
  useLayoutEffect(() => {
    latest.current = state
  }, [state])
  const running = useRef<Promise<number | null> | null>(null)

  /** The step is taken here too, so that a save right after another knows its version before the screen is drawn again. */
  const step = useCallback(
    (event: DeskEvent): void => {
      latest.current = deskReducer(latest.current, event)
      dispatch(event)
    },
    [dispatch],
  )
  const send = useCallback((): Promise<number | null> => {
    if (running.current) return running.current
    const { draft, view } = latest.current
    step({ type: 'sending' })
    running.current = saveQuote(quoteId, { customerId: view.customer.id, draft }, `"${view.version}"`)
      .then(({ value }) => {
        step({ type: 'stored', view: value })
        return latest.current.saving.state === 'saved' ? value.version : null
      })
      .catch((error: unknown) =>
        eventOf(quoteId, problemOf(error))
          .then(step, () => undefined)
          .then(() => null),
      )
      .finally(() => {
        running.current = null
      })
    return running.current
  }, [quoteId, step])
  const flush = useCallback<Flush>(async () => {
    await running.current
    // Twice: what was typed while the first save was on its way goes with the second.
    for (let round = 0; round < 2; round += 1) {
      const { saving, view } = latest.current
      if (saving.state === 'saved') return view.version
      if (saving.state === 'conflict' || saving.state === 'closed' || saving.state === 'gone') return null
      await send()
    }
    return latest.current.saving.state === 'saved' ? latest.current.view.version : null
  }, [send])
  return { flush, send }
}

/** Statuses that say the quote is no longer what the change was made on: taken back or accepted, or saved by another. */
const MOVED_ON: ReadonlySet<number> = new Set([409, 412])

/** What a refused save means: someone else saved or discarded it, the quote is closed, or it is told and tried again. */
async function eventOf(quoteId: string, problem: Problem): Promise<DeskEvent> {
  if (problem.status === 404) return { type: 'gone' }
  if (!MOVED_ON.has(problem.status)) return { type: 'failed', words: sayProblem(problem) }
  return getQuote(quoteId).then(
    ({ value }): DeskEvent => {
      if (isClosed(value.state)) return { type: 'closed', theirs: value }
      return problem.status === 412 ? { type: 'conflict', theirs: value } : { type: 'failed', words: sayProblem(problem) }
    },
    (again: unknown): DeskEvent => ({ type: 'failed', words: sayProblem(problemOf(again)) }),
  )
}

const sayProblem = (problem: Problem): string => {
  const parts = problem.errors.length > 0 ? problem.errors.map((fault) => fault.message) : [problem.title]
  return parts.map((part) => part.replace(/\.?$/, '.')).join(' ')
}

function useTimedSends(state: DeskState, send: () => Promise<number | null>): void {
  const how = state.saving.state
  useEffect(() => {
    if (how !== 'edited' && how !== 'failed') return
    const timer = setTimeout(() => void send(), how === 'edited' ? QUIET_MS : AGAIN_MS)
    return () => clearTimeout(timer)
    // The draft is in the list though the effect does not read it: each edit begins the wait anew.
    // oxlint-disable-next-line react/exhaustive-effect-dependencies
  }, [how, state.draft, send])
  useEffect(() => {
    if (how !== 'failed') return
    const again = (): void => void send()
    addEventListener('online', again)
    return () => removeEventListener('online', again)
  }, [how, send])
}

function useKeeping(quoteId: string, { saving, draft, view }: DeskState): void {
  const saved = saving.state === 'saved'
  const mine = saving.state === 'closed' ? saving.mine : null
  useEffect(() => {
    if (saved) forgetDraft(sessionStorage, quoteId)
    else keepDraft(sessionStorage, quoteId, { baseVersion: view.version, base: view.draft, draft: mine ?? draft })
  }, [saved, quoteId, draft, mine, view])
  useEffect(() => {
    if (saved) return
    const ask = (event: BeforeUnloadEvent): void => event.preventDefault()
    addEventListener('beforeunload', ask)
    return () => removeEventListener('beforeunload', ask)
  }, [saved])
}
