import { Hono } from 'hono'
import { SightingInput } from '../../core/pricing/schema.ts'
import { audit } from '../../db/audit.ts'
import { takeBackVote, voteOnSighting, withdrawSighting } from '../../db/sighting-votes.ts'
import { findSighting } from '../../db/sightings.ts'
import { SightingAnswer } from '../answers/pricing.ts'
import type { Ctx, Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { ById } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { notFound } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { transact } from '../transact.ts'
import { postSighting } from './post.ts'

const tag = 'Sightings'
const answers = { 200: SightingAnswer }
const refuses = [404, 409, 410, 412]
const vote = (c: Ctx, id: string, kind: 'confirm' | 'dispute') => transact(c.get('db'), (trx) => voteOnSighting(trx, signedIn(c), id, kind))

export const sightings = new Hono<Env>()
  .post(
    '/',
    operation('postSighting', {
      summary: 'Post a price; the same id again is the same sighting',
      tag,
      answers: { ...answers, 201: SightingAnswer },
      refuses: [...refuses, 429],
    }),
    valid('json', SightingInput),
    (c) => postSighting(c, c.req.valid('json')),
  )
  .get('/:id', operation('getSighting', { summary: 'One sighting', tag, answers, refuses: [404] }), valid('param', ById), async (c) => {
    const sighting = await findSighting(c.get('db'), signedIn(c), c.req.valid('param').id)
    return sighting === undefined ? notFound(c, 'sighting') : c.json(sighting, 200)
  })
  .post(
    '/:id/confirm',
    operation('confirmSighting', { summary: 'Say that you saw this price too', tag, answers, refuses }),
    valid('param', ById),
    async (c) => {
      const voted = await vote(c, c.req.valid('param').id, 'confirm')
      return voted.ok ? c.json(voted.value, 200) : refused(c, voted.refusal)
    },
  )
  .post(
    '/:id/dispute',
    operation('disputeSighting', { summary: 'Say that this price is not right', tag, answers, refuses }),
    valid('param', ById),
    async (c) => {
      const voted = await vote(c, c.req.valid('param').id, 'dispute')
      return voted.ok ? c.json(voted.value, 200) : refused(c, voted.refusal)
    },
  )
  .delete(
    '/:id/vote',
    operation('takeBackVote', { summary: 'Take your own vote back', tag, answers, refuses: [404] }),
    valid('param', ById),
    async (c) => {
      const taken = await transact(c.get('db'), (trx) => takeBackVote(trx, signedIn(c), c.req.valid('param').id))
      return taken.ok ? c.json(taken.value, 200) : notFound(c, 'sighting')
    },
  )
  .post(
    '/:id/withdraw',
    operation('withdrawSighting', { summary: 'Take your own sighting back', tag, answers, refuses }),
    valid('param', ById),
    async (c) => {
      const [actor, { id }] = [signedIn(c), c.req.valid('param')]
      const withdrawn = await transact(c.get('db'), async (trx) => {
        const outcome = await withdrawSighting(trx, actor, id)
        if (outcome.ok && outcome.value.reporterId !== actor.id) {
          const { productName, storeName } = outcome.value
          await audit(trx, {
            actor,
            action: 'sighting_withdrawn',
            subject: { kind: 'sighting', id, name: `${productName} at ${storeName}` },
          })
        }
        return outcome
      })
      return withdrawn.ok ? c.json(withdrawn.value, 200) : refused(c, withdrawn.refusal)
    },
  )
