import { Hono } from 'hono'
import { AnswerInput } from '../../core/quote/schema.ts'
import { GivenAnswer, LinkedQuoteAnswer } from '../answers/quotes.ts'
import type { Env } from '../context.ts'
import { ByToken } from '../http/inputs.ts'
import { linkRefused } from '../http/open-link.ts'
import { operation } from '../http/operation.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { setupLink } from '../setups/views.ts'
import { takeAnswer } from './answer.ts'
import { openQuoteLink } from './open.ts'

const tag = 'Links'
export const quoteLinkRoutes = new Hono<Env>()
  .get(
    '/:token',
    operation('getQuoteByLink', {
      summary: 'An issued quote, for whoever holds its link',
      tag,
      answers: { 200: LinkedQuoteAnswer },
      refuses: [404, 410, 429],
    }),
    valid('param', ByToken),
    async (c) => {
      const opened = await openQuoteLink(c, c.req.valid('param').token)
      if (!opened.found) return linkRefused(c, opened.gone)
      const { quote, today } = opened
      const { inputs, ...document } = quote.document
      return c.json(
        {
          document,
          install: inputs.install,
          customerName: quote.customerName,
          state: quote.state,
          supersededBy: null,
          answer: quote.answer,
          setupLink: quote.setup === null ? null : setupLink(c, quote.setup),
          today,
        },
        200,
      )
    },
  )
  .post(
    '/:token/answer',
    operation('answerQuoteByLink', {
      summary: 'Accept a build or decline',
      tag,
      answers: { 200: GivenAnswer },
      refuses: [404, 409, 410, 412, 429],
    }),
    valid('param', ByToken),
    valid('json', AnswerInput),
    async (c) => {
      const opened = await openQuoteLink(c, c.req.valid('param').token)
      if (!opened.found) return linkRefused(c, opened.gone)
      const answered = await takeAnswer(c, opened.quote.id, c.req.valid('json'), opened.today)
      return answered.ok
        ? c.json(answered.value, 200)
        : refused(c, answered.refusal, answered.refusal.code === 'letter_unknown' ? 'letter' : undefined)
    },
  )
