import type { z } from 'zod'
import type { AnswerInput } from '../../core/quote/schema.ts'
import { answerQuote } from '../../db/quote-answer.ts'
import type { Ctx } from '../context.ts'
import { transact } from '../transact.ts'

/** Takes a customer's answer; of two at once one wins. */
export function takeAnswer(c: Ctx, quoteId: string, answer: z.output<typeof AnswerInput>, today: string) {
  return transact(c.get('db'), (trx) => answerQuote(trx, quoteId, { ...answer, at: new Date(c.get('deps').clock()), today }))
}
