import { Hono } from 'hono'
import { audit } from '../../db/audit.ts'
import { findQuote } from '../../db/quotes.ts'
import { renewSetupLink } from '../../db/renew-link.ts'
import { SetupLinkAnswer, SetupsAnswer } from '../answers/quotes.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { ById } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { quoteSubject } from '../quotes/subject.ts'
import { transact } from '../transact.ts'
import { setupLink, setupViews } from './views.ts'

const tag = 'Setups'

export const setups = new Hono<Env>()
  .get('/', operation('listSetups', { summary: 'Setups with their ticks', tag, answers: { 200: SetupsAnswer } }), async (c) =>
    c.json({ items: await setupViews(c) }, 200),
  )
  .post(
    '/:id/link',
    operation('renewSetupLink', {
      summary: 'End the link that hangs on a tank and make a new one',
      tag,
      answers: { 200: SetupLinkAnswer },
      refuses: [404, 409, 410, 412],
    }),
    valid('param', ById),
    async (c) => {
      const [actor, { id }] = [signedIn(c), c.req.valid('param')]
      const renewed = await transact(c.get('db'), async (trx) => {
        const outcome = await renewSetupLink(trx, actor, id)
        if (!outcome.ok) return outcome
        const quote = await findQuote(trx, actor, outcome.value.quoteId)
        const subject = quoteSubject({ id: outcome.value.quoteId, number: quote?.number ?? null })
        await audit(trx, { actor, action: 'setup_link_renewed', subject })
        return outcome
      })
      if (!renewed.ok) return refused(c, renewed.refusal)
      return c.json({ link: setupLink(c, { id, linkVersion: renewed.value.linkVersion }) }, 200)
    },
  )
