import { CHECK_TITLES } from '../../../core/sizing/check-titles.ts'
import { useState, type ReactElement } from 'react'
import { heldDiscounts, sayHeldHere } from '../../../core/quote/discount-room.ts'
import { openSlots, sayOpenSlots } from '../../../core/quote/open-slots.ts'
import { issueFaults, type IssueFault } from '../../../core/quote/issue-faults.ts'
import { discountOf } from '../../../core/quote/quote-market.ts'
import type { QuoteView } from '../../../core/quote/quote-view.ts'
import { problemOf } from '../client/problem.ts'
import { getQuote, issueQuote } from '../client/quotes.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { DateField, TextField } from '../parts/field.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { Verdict } from '../parts/verdict.tsx'
import type { Flush } from './autosave.ts'
import { useDesk, useDialog } from './desk-context.ts'
import { FaultList } from './fault-list.tsx'
import { sayMissing } from './tier-words.ts'
import { useSameAsIssued } from './use-issued-draft.ts'

interface Props {
  flush: Flush
  reload(view: QuoteView): void
}

/** Issuing freezes the draft as the next version and makes the links: asked first, with what is still open in it. */
export function IssueDialog({ flush, reload }: Props): ReactElement {
  const { state, inputs } = useDesk()
  const dialog = useDialog('issue')
  const { view } = state
  const faults = issueFaults(inputs, inputs.asOf)
  const version = view.revisions.length + 1
  const same = useSameAsIssued() === true
  const shown = dialog.shown !== null
  const { busy, failed, issue, clear } = useIssue(flush, reload)
  const close = (): void => {
    clear()
    dialog.close()
  }
  return (
    <Dialog
      open={shown}
      title={version === 1 ? `Issue this quote to ${view.customer.name}?` : `Issue version ${version} to ${view.customer.name}?`}
      onClose={close}
      actions={
        <>
          <Button onClick={close}>Not yet</Button>
          <Button look="main" busy={busy} off={faults.length > 0} onClick={() => void issue()}>
            {version === 1 ? 'Issue quote' : `Issue version ${version}`}
          </Button>
        </>
      }
    >
      {same && <p>Nothing in the draft changed since version {version - 1}: only the prices of today would be new.</p>}
      <Asked faults={faults} />
      <StillOpen />
      <p>
        What is issued cannot be changed or taken back from whoever has seen it.{' '}
        {version === 1 ? 'It gets its number and two links' : 'The same links then show the new version'}; later changes become version{' '}
        {version + 1}.
      </p>
      {failed === 'not_saved' ? (
        <p className="fault">Not issued: the draft is not saved yet. What is wrong is said at the top of the desk.</p>
      ) : (
        <NotIssued error={failed} />
      )}
    </Dialog>
  )
}

/** What the server has against it, field by field, each with the way there; else what happened. */
function NotIssued({ error }: { error: unknown }): ReactElement | null {
  const faults = error ? problemOf(error).errors : []
  return faults.length > 0 ? <FaultList faults={faults} /> : <ErrorNotice error={error} />
}

function useIssue(flush: Flush, reload: (view: QuoteView) => void) {
  const { open, state } = useDesk()
  const [busy, setBusy] = useState(false)
  const [failed, setFailed] = useState<unknown>(null)
  const issue = async (): Promise<void> => {
    setBusy(true)
    setFailed(null)
    try {
      const version = await flush()
      if (version === null) return setFailed('not_saved')
      await issueQuote(state.view.id, `"${version}"`)
      reload((await getQuote(state.view.id)).value)
      open(null)
    } catch (error) {
      setFailed(error)
    } finally {
      setBusy(false)
    }
  }
  return { busy, failed, issue, clear: () => setFailed(null) }
}

const ASKED_HERE: ReadonlySet<string> = new Set(['title', 'standsUntil', 'suggestion.reason'])

/** Title, last day, the reason of a suggestion, and in words whatever else the rules of issuing still miss. */
function Asked({ faults }: { faults: IssueFault[] }): ReactElement {
  const { state, builds, edit } = useDesk()
  const { draft, view } = state
  const of = (field: string): string | null => faults.find((fault) => fault.field === field)?.message ?? null
  const { suggestion } = draft
  const suggested = builds.find((build) => build.id === suggestion?.buildId)
  const others = faults.filter((fault) => !ASKED_HERE.has(fault.field))
  return (
    <>
      <TextField
        label="Title, as the customer reads it"
        value={draft.title}
        maxLength={120}
        fault={of('title')}
        onChange={(title) => edit({ do: 'title', title })}
      />
      <DateField
        label="Stands until"
        value={draft.standsUntil ?? ''}
        min={view.asOf}
        help="The last day on which the customer can accept."
        fault={of('standsUntil')}
        onChange={(date) => edit({ do: 'stands_until', date: date === '' ? null : date })}
      />
      {suggestion && suggested && (
        <TextField
          label={`Why build ${suggested.letter} is suggested`}
          value={suggestion.reason}
          maxLength={500}
          fault={of('suggestion.reason')}
          onChange={(reason) => edit({ do: 'suggest', suggestion: { buildId: suggestion.buildId, reason } })}
        />
      )}
      <FaultList faults={others} />
    </>
  )
}

/** What a customer will see as open or as a fault: shown once more before it is printed. */
function StillOpen(): ReactElement | null {
  const { builds, inputs, currency } = useDesk()
  const discount = discountOf(inputs)
  const rows = builds.flatMap((build) => [
    ...(openSlots(build).length === 0
      ? []
      : [{ key: `${build.id}-open`, verdict: 'not_known' as const, words: `${build.letter}: ${sayOpenSlots(build)}` }]),
    ...(build.cost.today.complete
      ? []
      : [{ key: `${build.id}-total`, verdict: 'not_known' as const, words: `${build.letter}: ${sayMissing(build.cost.today.missing)}` }]),
    ...heldDiscounts(discount, [build]).map((held) => ({
      key: `${build.id}-discount`,
      verdict: 'marginal' as const,
      words: `${build.letter}: ${sayHeldHere(held, currency)}`,
    })),
    ...build.report.findings
      .filter((finding) => finding.verdict === 'does_not_fit')
      .map((finding) => ({
        key: `${build.id}-${finding.check}`,
        verdict: 'does_not_fit' as const,
        words: `${build.letter}: ${CHECK_TITLES[finding.check]} ${finding.wording ?? 'does not fit'}`,
      })),
  ])
  if (rows.length === 0) return null
  return (
    <div>
      <p className="label">Still open; it is printed as it stands</p>
      <ul className="still-open">
        {rows.map((row) => (
          <li key={row.key}>
            <Verdict verdict={row.verdict} words={row.words} />
          </li>
        ))}
      </ul>
    </div>
  )
}
