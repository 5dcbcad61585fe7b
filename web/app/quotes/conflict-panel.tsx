import { useState, type ReactElement } from 'react'
import { Button } from '../parts/button.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { Told } from '../parts/told.tsx'
import type { Flush } from './autosave.ts'
import { useDesk } from './desk-context.ts'
import { compareDrafts } from './draft-compare.ts'
import { mergeWith } from './desk-state.ts'
import { sayClock } from './saving-words.ts'
import { useCopyQuote } from './use-copy-quote.ts'

/** A save that did not go through: what happened, that nothing is lost, what to do. */
export function ConflictPanel({ flush }: { flush: Flush }): ReactElement | null {
  const { state } = useDesk()
  if (state.saving.state === 'failed')
    return (
      <Told kind="offline" title={`Not saved: ${state.saving.words}`} live>
        <p>Your change is kept in this tab and is tried again by itself.</p>
        <p>
          <Button small onClick={() => void flush()}>
            Try again now
          </Button>
        </p>
      </Told>
    )
  if (state.saving.state === 'gone') return <Gone />
  return state.saving.state === 'conflict' ? <Conflict /> : null
}

/** Discarded elsewhere while it lay open here: the draft on the screen can still become a quote of its own. */
function Gone(): ReactElement {
  const { view, draft } = useDesk().state
  const copy = useCopyQuote(view)
  return (
    <Told kind="stop" title="Not saved: in another window or by someone else this quote was discarded." live>
      <p>What you see is kept in this tab alone. Make a new quote from it, or leave it.</p>
      <ErrorNotice error={copy.error} />
      <p>
        <Button small busy={copy.isPending} onClick={() => copy.mutate(draft)}>
          Make a new quote from it
        </Button>
      </p>
    </Told>
  )
}

function Conflict(): ReactElement | null {
  const desk = useDesk()
  const { state } = desk
  const [comparing, setComparing] = useState(false)
  if (state.saving.state !== 'conflict') return null
  const { theirs } = state.saving
  const both = mergeWith(state, theirs).clashes.length
  const zone = theirs.install.timeZone
  return (
    <Told
      kind="stop"
      title={`Not saved: in another window or by someone else this quote was changed at ${sayClock(theirs.savedAt, zone)}.`}
      live
    >
      <p>
        Your change is kept here. Keep mine also keeps what only the other side changed
        {both === 0
          ? ', and nothing was changed on both'
          : `; ${both === 1 ? 'one thing was changed on both sides and stays' : `${both} things were changed on both sides and stay`} yours`}
        . Take theirs drops your unsaved change.
      </p>
      <div className="acts">
        <Button small onClick={() => setComparing(!comparing)} aria-expanded={comparing}>
          Compare
        </Button>
        <Button small onClick={() => desk.act({ type: 'keep_mine' })}>
          Keep mine
        </Button>
        <Button small onClick={() => desk.act({ type: 'take_theirs' })}>
          Take theirs
        </Button>
      </div>
      {comparing && <Differences />}
    </Told>
  )
}

function Differences(): ReactElement | null {
  const { state, inputs } = useDesk()
  if (state.saving.state !== 'conflict') return null
  const { theirs } = state.saving
  const rows = compareDrafts(state.draft, theirs.draft, { ...inputs, products: [...inputs.products, ...theirs.products] })
  return (
    <section className="table-box" aria-label="Differences">
      <table className="ruled">
        <caption className="sr">What is different between yours and theirs</caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Yours, not saved</th>
            <th scope="col">Theirs, saved</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.where}>
              <th scope="row">{row.where}</th>
              <td>{row.mine}</td>
              <td>{row.theirs}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
