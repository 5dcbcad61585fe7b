import { useState, type ReactElement } from 'react'
import { civilDateAt, sayDate, sayWeekday, yearOf } from '../../../core/dates.ts'
import type { QuoteView } from '../../../core/quote/quote-view.ts'
import { Button } from '../parts/button.tsx'
import { late } from '../parts/late.tsx'
import { Told } from '../parts/told.tsx'
import type { Flush } from './autosave.ts'
import { CopyLink } from './copy-link.tsx'
import { useDesk } from './desk-context.ts'
import { PaperLinks } from './paper-links.tsx'
import { RenewLink } from './renew-link.tsx'
import { isClosed, sayClock } from './saving-words.ts'
import { useRequote } from './use-requote.ts'
import { useSameAsIssued } from './use-issued-draft.ts'

const ChangesPanel = late('what changed', async () => (await import('./changes-panel.tsx')).ChangesPanel)

/** What was issued: the newest version, its links and paper, the answer, whether the draft has moved on since. */
export function IssuedPanel({ flush }: { flush: Flush }): ReactElement | null {
  const { state, open } = useDesk()
  const [comparing, setComparing] = useState(false)
  const { view } = state
  const newest = view.revisions.at(-1)
  if (!newest) return null
  const year = yearOf(view.asOf)
  return (
    <section className="issued" aria-labelledby="issued-heading">
      <div className="sechead">
        <h2 id="issued-heading">
          Version {newest.revision}, issued {sayDate(newest.issuedOn, year)}
        </h2>
        <p className="quiet">stands until {sayWeekday(newest.standsUntil, year)}</p>
      </div>
      <Answer view={view} />
      <ChangedSince revision={newest.revision} />
      <Links view={view} />
      <div className="acts">
        <PaperLinks quoteId={view.id} revision={newest.revision} />
        {view.revisions.length + (isClosed(view.state) ? 0 : 1) > 1 && (
          <Button small aria-expanded={comparing} onClick={() => setComparing(!comparing)}>
            What changed
          </Button>
        )}
        <Requote flush={flush} onDone={() => setComparing(true)} />
        {view.links && <RenewLink />}
        {view.state === 'issued' && (
          <Button small look="plain" onClick={() => open({ at: 'withdraw' })}>
            Withdraw
          </Button>
        )}
      </div>
      {comparing && <ChangesPanel />}
    </section>
  )
}

/** A new version at today's prices, from the draft as it stands: what was issued stays as it was. */
function Requote({ flush, onDone }: { flush: Flush; onDone: () => void }): ReactElement | null {
  const { view } = useDesk().state
  const requote = useRequote(flush, onDone)
  if (isClosed(view.state)) return null
  return (
    <>
      <Button small busy={requote.isPending} onClick={() => requote.mutate()}>
        Requote at today’s prices
      </Button>
      {requote.isError && <output className="reason">Not requoted: {requote.error.message}</output>}
    </>
  )
}

function Answer({ view }: { view: QuoteView }): ReactElement | null {
  const { answer } = view
  if (!answer) return null
  const at = `${sayDate(civilDateAt(Date.parse(answer.at), view.install.timeZone), yearOf(view.asOf))}, ${sayClock(answer.at, view.install.timeZone)}`
  const version = answer.revision === view.revisions.at(-1)?.revision ? '' : `, version ${answer.revision}`
  const title = answer.answer === 'accepted' ? `Accepted build ${answer.letter ?? ''} on ${at}${version}` : `Declined on ${at}${version}`
  // A closed quote says so at the top already; one such box in a view is enough.
  if (isClosed(view.state))
    return (
      <p>
        {title}
        {answer.note && `: “${answer.note}”`}
      </p>
    )
  return (
    <Told kind="note" title={title}>
      {answer.note && <p>“{answer.note}”</p>}
    </Told>
  )
}

/** Says that the customer does not see what is on the screen. */
function ChangedSince({ revision }: { revision: number }): ReactElement | null {
  const { view } = useDesk().state
  const same = useSameAsIssued()
  if (same !== false || view.state !== 'issued') return null
  return (
    <p className="quiet">
      Changed since: the customer sees version {revision} until version {revision + 1} is issued.
    </p>
  )
}

function Links({ view }: { view: QuoteView }): ReactElement {
  if (!view.links)
    return <p className="quiet">No links: they need an address that begins with https. The manager sets it; the paper works without.</p>
  return (
    <div className="links">
      <CopyLink label="Quote link, for the customer" address={view.links.quote} />
      <CopyLink label="Setup link, hangs on the tank: no name, no prices" address={view.links.setup} />
    </div>
  )
}
