import { issueFaults } from '../../core/quote/issue-faults.ts'
import { revisionDocument } from '../../core/quote/revision-document.ts'
import { audit } from '../../db/audit.ts'
import { issueRevision } from '../../db/quote-issue.ts'
import type { QuoteRecord } from '../../db/quote-record.ts'
import type { Ctx } from '../context.ts'
import { signedIn } from '../context.ts'
import type { FieldError } from '../http/problem.ts'
import { problem } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { transact } from '../transact.ts'
import { byDates } from './by-dates.ts'
import { quoteInputs } from './inputs.ts'
import { quoteSubject } from './subject.ts'

/** Freezes a quote's draft as its next revision, worked out here and not taken from the desk. Null when done, else the refusal. */
export async function issueQuote(c: Ctx, record: QuoteRecord, version: number) {
  const inputs = await quoteInputs(c, record.draft)
  const { draft } = record
  const faults: FieldError[] = issueFaults(inputs, inputs.asOf)
  if (record.customer.erasedOn !== null) faults.unshift({ field: 'customerId', message: 'This customer was erased. Choose another.' })
  if (faults.length > 0)
    return problem(
      c,
      422,
      'invalid',
      faults.length === 1 ? (faults[0]?.message ?? '') : `${faults.length} things are missing before it can be issued.`,
      faults,
    )
  const standsUntil = draft.standsUntil ?? inputs.asOf
  const actor = signedIn(c)
  const expected = await byDates(c, inputs)
  const at = { issuedAt: new Date(c.get('deps').clock()), issuedOn: inputs.asOf }
  const issued = await transact(c.get('db'), async (trx) => {
    const outcome = await issueRevision(trx, actor, record.id, version, at, ({ number, revision, draft: frozen, before }) =>
      revisionDocument(
        { ...inputs, draft: frozen },
        { number, revision, issuedOn: inputs.asOf, standsUntil, advisor: record.advisor },
        expected,
        before,
      ),
    )
    if (!outcome.ok) return outcome
    const { number, revision } = outcome.value
    await audit(trx, { actor, action: 'quote_issued', subject: quoteSubject({ id: record.id, number }), after: { revision } })
    return outcome
  })
  return issued.ok ? null : refused(c, issued.refusal)
}
