import { Hono } from 'hono'
import { AnswerInput } from '../../core/quote/schema.ts'
import { checksPage } from '../../web/pages/checks-page.ts'
import { linkGonePage } from '../../web/pages/link-gone-page.ts'
import type { PageFault } from '../../web/pages/page-fault.ts'
import type { QuotePageProps } from '../../web/pages/quote-page.ts'
import { quotePage } from '../../web/pages/quote-page.ts'
import type { Ctx, Env } from '../context.ts'
import { keepPrivate, pagePolicy, setPolicy } from '../http/headers.ts'
import { operation } from '../http/operation.ts'
import { linkOrigin } from '../http/site.ts'
import { takeAnswer } from '../quote-links/answer.ts'
import type { OpenedQuote } from '../quote-links/open.ts'
import { openQuoteLink } from '../quote-links/open.ts'
import { acceptedBuild, paperLinks, sendPdf } from '../quotes/paper.ts'
import { setupLink } from '../setups/views.ts'
import { faultsOf, formOf } from './form.ts'

const tag = 'Pages'
const page = { tag, hide: true, answers: { 200: 'text/html' } }
type Found = Extract<OpenedQuote, { found: true }>

function gonePage(c: Ctx, opened: Extract<OpenedQuote, { found: false }>) {
  return c.html(linkGonePage({ what: 'quote', installName: opened.install.name, contact: opened.install.contact }), opened.gone ? 410 : 404)
}

function show(c: Ctx, { quote, today }: Found, token: string, faults: PageFault[] = [], typed: QuotePageProps['typed'] = {}) {
  const { document, customerName, erasedOn, state, answer, setup } = quote
  const setupPath = setup === null ? null : setupLink(c, setup)
  return c.html(
    quotePage({
      document,
      customerName,
      erasedOn,
      state,
      supersededBy: null,
      answer,
      today,
      path: `/q/${token}`,
      setupPath,
      faults,
      typed,
    }),
    faults.length === 0 ? 200 : 422,
  )
}

function begin(c: Ctx): string {
  keepPrivate(c)
  setPolicy(c, pagePolicy())
  return c.req.param('token') ?? ''
}

/** The paper a reader chose; the document's own unless the query names one. */
const paperOf = (asked: string | undefined, usual: 'a4' | 'letter'): 'a4' | 'letter' =>
  asked === 'a4' || asked === 'letter' ? asked : usual

export const quotePages = new Hono<Env>()
  .get('/:token', operation('showQuotePage', { ...page, summary: 'A quote, for whoever holds its link' }), async (c) => {
    const token = begin(c)
    const opened = await openQuoteLink(c, token)
    return opened.found ? show(c, opened, token) : gonePage(c, opened)
  })
  .get(
    '/:token/checks/:letter',
    operation('showChecksPage', { ...page, summary: 'Every check of one build of a quote, with its formula and what went in' }),
    async (c) => {
      const token = begin(c)
      const opened = await openQuoteLink(c, token)
      if (!opened.found) return gonePage(c, opened)
      const { document } = opened.quote
      const build = document.builds.find(({ letter }) => letter === c.req.param('letter'))
      return build === undefined ? c.redirect(`/q/${token}`, 303) : c.html(checksPage(document, build, `/q/${token}`), 200)
    },
  )
  .post('/:token/answer', operation('answerOnQuotePage', { ...page, summary: 'The answer from its form' }), async (c) => {
    const token = begin(c)
    const opened = await openQuoteLink(c, token)
    if (!opened.found) return gonePage(c, opened)
    const { revision, answer, letter, note } = await formOf(c)
    const typed = { answer, letter, note }
    const read = AnswerInput.safeParse({
      revision: Number(revision),
      answer,
      letter: answer === 'declined' || letter === '' ? null : (letter ?? null),
      note: note ?? '',
    })
    if (!read.success) return show(c, opened, token, faultsOf(read.error, { revision: '' }), typed)
    const answered = await takeAnswer(c, opened.quote.id, read.data, opened.today)
    if (answered.ok) return c.redirect(`/q/${token}`, 303)
    const again = await openQuoteLink(c, token)
    if (!again.found) return gonePage(c, again)
    return show(
      c,
      again,
      token,
      [{ field: answered.refusal.code === 'letter_unknown' ? 'letter' : '', message: answered.refusal.message }],
      typed,
    )
  })
  .get(
    '/:token/pdf',
    operation('getQuotePdfByLink', { ...page, answers: { 200: 'application/pdf' }, summary: 'The quote on paper' }),
    async (c) => {
      const token = begin(c)
      const opened = await openQuoteLink(c, token)
      if (!opened.found) return gonePage(c, opened)
      const { document, customerName, erasedOn, setup } = opened.quote
      const origin = linkOrigin(c)
      const setupAddress = setup === null ? null : setupLink(c, setup)
      const links = origin === null || setupAddress === null ? null : { quote: `${origin}/q/${token}`, setup: setupAddress }
      const paper = paperOf(c.req.query('paper'), document.inputs.install.paper)
      setPolicy(c, "default-src 'none'; frame-ancestors 'none'")
      const name = `quote-${document.number}-version-${document.revision}`
      const chosen = acceptedBuild(opened.quote.answer, document.revision)
      return sendPdf(
        c,
        name,
        { document, customerName, erasedOn, paper, links: paperLinks(c, links), draft: false, ...chosen },
        opened.quote.id,
      )
    },
  )
