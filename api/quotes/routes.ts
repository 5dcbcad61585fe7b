import { randomUUID } from 'node:crypto'
import { Hono } from 'hono'
import * as z from 'zod'
import { emptyDraft } from '../../core/quote/empty-draft.ts'
import { revisionDocument } from '../../core/quote/revision-document.ts'
import { QuoteDraftSchema } from '../../core/quote/schema.ts'
import { oneOf, rowId, strict } from '../../core/schema.ts'
import { audit } from '../../db/audit.ts'
import { listQuotes } from '../../db/quote-list.ts'
import { createQuote, discardDraft, findQuote, saveDraft, withdrawQuote } from '../../db/quotes.ts'
import { renewQuoteLink } from '../../db/renew-link.ts'
import { findRevision } from '../../db/revisions.ts'
import { QuoteAnswer, QuoteListAnswer, RevisionAnswer } from '../answers/quotes.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { ById, searchText } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { notFound } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { basedOn, etagOf } from '../http/versions.ts'
import { lapse } from '../jobs/lapse.ts'
import { transact } from '../transact.ts'
import { draftFaults } from './draft-faults.ts'
import { byDates } from './by-dates.ts'
import { quoteInputs } from './inputs.ts'
import { issueQuote } from './issue.ts'
import { acceptedBuild, paperLinks, sendPdf } from './paper.ts'
import { quoteSubject } from './subject.ts'
import { quoteLinks, quoteView } from './view.ts'

const tag = 'Quotes'
const STATES = ['draft', 'issued', 'accepted', 'declined', 'lapsed', 'withdrawn'] as const
const QuoteQuery = strict('Query', { state: oneOf('State', STATES).optional(), q: searchText })
const NewQuote = strict('Quote', { customerId: rowId('Customer'), draft: QuoteDraftSchema.optional() })
const SavedQuote = strict('Quote', { customerId: rowId('Customer'), draft: QuoteDraftSchema })
const revisionText = z.string().regex(/^[1-9]\d{0,3}$/, { error: 'Version is a whole number from 1.' })
const ByRevision = strict('Path', { id: rowId('Id'), n: revisionText })
const PaperQuery = strict('Query', { paper: oneOf('Paper', ['a4', 'letter']).optional() })

export const quotes = new Hono<Env>()
  .get(
    '/',
    operation('listQuotes', { summary: 'Quotes, last saved first', tag, answers: { 200: QuoteListAnswer } }),
    valid('query', QuoteQuery),
    async (c) => {
      await lapse(c)
      return c.json({ rows: await listQuotes(c.get('db'), signedIn(c), c.req.valid('query')) }, 200)
    },
  )
  .post(
    '/',
    operation('createQuote', { summary: 'Begin a quote', tag, answers: { 201: QuoteAnswer }, refuses: [404, 409, 410, 412] }),
    valid('json', NewQuote),
    async (c) => {
      const { customerId, draft = emptyDraft(randomUUID()) } = c.req.valid('json')
      const fault = await draftFaults(c, draft)
      if (fault !== null) return fault
      const created = await createQuote(c.get('db'), signedIn(c), { customerId, draft })
      if (!created.ok) return refused(c, created.refusal, 'customerId')
      c.header('ETag', etagOf(created.value.version))
      return c.json(await quoteView(c, created.value), 201)
    },
  )
  .get(
    '/:id',
    operation('getQuote', {
      summary: 'A quote with all that its builds are worked out from',
      tag,
      answers: { 200: QuoteAnswer },
      refuses: [404],
    }),
    valid('param', ById),
    async (c) => {
      await lapse(c)
      const record = await findQuote(c.get('db'), signedIn(c), c.req.valid('param').id)
      if (record === undefined) return notFound(c, 'quote')
      c.header('ETag', etagOf(record.version))
      return c.json(await quoteView(c, record), 200)
    },
  )
  .put(
    '/:id',
    operation('saveQuote', { summary: 'Save the draft', tag, answers: { 200: QuoteAnswer }, refuses: [404, 409, 410, 412, 428] }),
    valid('param', ById),
    valid('json', SavedQuote),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const { customerId, draft } = c.req.valid('json')
      const fault = await draftFaults(c, draft, c.req.valid('param').id)
      if (fault !== null) return fault
      const saved = await saveDraft(c.get('db'), signedIn(c), c.req.valid('param').id, version, { customerId, draft })
      if (!saved.ok) return refused(c, saved.refusal, saved.refusal.code === 'customer_unknown' ? 'customerId' : undefined)
      c.header('ETag', etagOf(saved.value.version))
      return c.json(await quoteView(c, saved.value), 200)
    },
  )
  .delete(
    '/:id',
    operation('discardQuote', {
      summary: 'Discard a draft that was never issued',
      tag,
      answers: { 204: null },
      refuses: [404, 409, 410, 412, 428],
    }),
    valid('param', ById),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const [actor, { id }] = [signedIn(c), c.req.valid('param')]
      const discarded = await transact(c.get('db'), async (trx) => {
        const outcome = await discardDraft(trx, actor, id, version)
        if (outcome.ok) await audit(trx, { actor, action: 'quote_discarded', subject: quoteSubject({ id, number: null }) })
        return outcome
      })
      return discarded.ok ? c.body(null, 204) : refused(c, discarded.refusal)
    },
  )
  .post(
    '/:id/issue',
    operation('issueQuote', {
      summary: 'Freeze the draft as the next numbered version',
      tag,
      answers: { 200: QuoteAnswer },
      refuses: [404, 409, 410, 412, 428],
    }),
    valid('param', ById),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const { id } = c.req.valid('param')
      const record = await findQuote(c.get('db'), signedIn(c), id)
      if (record === undefined) return notFound(c, 'quote')
      const refusal = await issueQuote(c, record, version)
      if (refusal !== null) return refusal
      const issued = await findQuote(c.get('db'), signedIn(c), id)
      if (issued === undefined) return notFound(c, 'quote')
      c.header('ETag', etagOf(issued.version))
      return c.json(await quoteView(c, issued), 200)
    },
  )
  .post(
    '/:id/withdraw',
    operation('withdrawQuote', { summary: 'Take a quote back', tag, answers: { 200: QuoteAnswer }, refuses: [404, 409, 410, 412] }),
    valid('param', ById),
    async (c) => {
      const [actor, { id }] = [signedIn(c), c.req.valid('param')]
      const withdrawn = await transact(c.get('db'), async (trx) => {
        const outcome = await withdrawQuote(trx, actor, id)
        if (outcome.ok) await audit(trx, { actor, action: 'quote_withdrawn', subject: quoteSubject(outcome.value) })
        return outcome
      })
      if (!withdrawn.ok) return refused(c, withdrawn.refusal)
      c.header('ETag', etagOf(withdrawn.value.version))
      return c.json(await quoteView(c, withdrawn.value), 200)
    },
  )
  .post(
    '/:id/link',
    operation('renewQuoteLink', {
      summary: 'End the customer’s link and make a new one',
      tag,
      answers: { 200: QuoteAnswer },
      refuses: [404, 409, 410, 412],
    }),
    valid('param', ById),
    async (c) => {
      const [actor, { id }] = [signedIn(c), c.req.valid('param')]
      const renewed = await transact(c.get('db'), async (trx) => {
        const outcome = await renewQuoteLink(trx, actor, id)
        if (outcome.ok)
          await audit(trx, { actor, action: 'quote_link_renewed', subject: quoteSubject({ id, number: outcome.value.number }) })
        return outcome
      })
      if (!renewed.ok) return refused(c, renewed.refusal)
      const record = await findQuote(c.get('db'), actor, id)
      if (record === undefined) return notFound(c, 'quote')
      c.header('ETag', etagOf(record.version))
      return c.json(await quoteView(c, record), 200)
    },
  )
  .get(
    '/:id/revisions/:n',
    operation('getRevision', { summary: 'One issued version with its inputs', tag, answers: { 200: RevisionAnswer }, refuses: [404] }),
    valid('param', ByRevision),
    async (c) => {
      const { id, n } = c.req.valid('param')
      const document = await findRevision(c.get('db'), signedIn(c), id, Number(n))
      return document === undefined ? notFound(c, 'version') : c.json(document, 200)
    },
  )
  .get(
    '/:id/revisions/:n/pdf',
    operation('getRevisionPdf', { summary: 'An issued version on paper', tag, answers: { 200: 'application/pdf' }, refuses: [404] }),
    valid('param', ByRevision),
    valid('query', PaperQuery),
    async (c) => {
      const { id, n } = c.req.valid('param')
      const record = await findQuote(c.get('db'), signedIn(c), id)
      const document = await findRevision(c.get('db'), signedIn(c), id, Number(n))
      if (record === undefined || document === undefined) return notFound(c, 'version')
      return sendPdf(c, `quote-${document.number}-version-${document.revision}`, {
        document,
        customerName: record.customer.erasedOn === null ? record.customer.name : null,
        erasedOn: record.customer.erasedOn,
        paper: c.req.valid('query').paper ?? document.inputs.install.paper,
        links: paperLinks(c, quoteLinks(c, record)),
        draft: false,
        ...acceptedBuild(record.answer, document.revision),
      })
    },
  )
  .get(
    '/:id/draft.pdf',
    operation('getDraftPdf', {
      summary: 'The draft on paper, marked as not issued',
      tag,
      answers: { 200: 'application/pdf' },
      refuses: [404],
    }),
    valid('param', ById),
    valid('query', PaperQuery),
    async (c) => {
      const record = await findQuote(c.get('db'), signedIn(c), c.req.valid('param').id)
      if (record === undefined) return notFound(c, 'quote')
      const inputs = await quoteInputs(c, record.draft)
      const number = record.number ?? 'draft'
      const before = await findRevision(c.get('db'), signedIn(c), record.id, record.revisions.length)
      const heading = {
        number,
        revision: record.revisions.length + 1,
        issuedOn: inputs.asOf,
        standsUntil: record.draft.standsUntil ?? inputs.asOf,
        advisor: record.advisor,
      }
      return sendPdf(c, record.number === null ? 'quote-draft' : `quote-${number}-draft`, {
        document: revisionDocument(inputs, heading, await byDates(c, inputs), before),
        customerName: record.customer.erasedOn === null ? record.customer.name : null,
        erasedOn: record.customer.erasedOn,
        paper: c.req.valid('query').paper ?? inputs.install.paper,
        links: null,
        draft: true,
      })
    },
  )
