import { Hono } from 'hono'
import type { Transaction } from 'kysely'
import * as z from 'zod'
import { sayMoney } from '../../core/money.ts'
import { storeCurrency } from '../../core/pricing/foreign-stores.ts'
import type { SightingRow } from '../../core/pricing/record.ts'
import { count, rowId, strict, text } from '../../core/schema.ts'
import { audit } from '../../db/audit.ts'
import type { Database } from '../../db/database.ts'
import { getInstall } from '../../db/install.ts'
import { listWaiting, withdrawAsManager } from '../../db/moderation.ts'
import { listUndos, reportersWithCounts, reverseUndo, undoSightings, type SightingUndo } from '../../db/sighting-undo.ts'
import { voteOnSighting } from '../../db/sighting-votes.ts'
import { findStore } from '../../db/stores.ts'
import { UndoAnswer, UndosAnswer, WaitingAnswer } from '../answers/moderation.ts'
import { SightingAnswer } from '../answers/pricing.ts'
import type { Ctx, Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { ById, paging } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { transact } from '../transact.ts'

const tag = 'Moderation'
const REASON_MOST = 500
const Judgement = z.discriminatedUnion(
  'decision',
  [
    strict('Judgement', { decision: z.literal('accept') }),
    strict('Judgement', { decision: z.literal('dispute') }),
    strict('Judgement', { decision: z.literal('withdraw'), reason: text('Reason', 1, REASON_MOST) }),
  ],
  { error: 'Decision is one of: accept, dispute, withdraw.' },
)
const MOST_SIGHTINGS = 10_000_000
const Undoing = strict('Request', {
  personId: rowId('Person'),
  sightings: count('Number of sightings', 0, MOST_SIGHTINGS),
  foundGone: count('Number found gone', 0, MOST_SIGHTINGS).default(0),
})

const undoView = ({ at, reversibleUntil, reversedAt, ...rest }: SightingUndo) => ({
  ...rest,
  at: at.toISOString(),
  reversibleUntil: reversibleUntil.toISOString(),
  reversedAt: reversedAt?.toISOString() ?? null,
})
const now = (c: Ctx): Date => new Date(c.get('deps').clock())

/** A manager's yes and no are one person's, and count only where that person is a second one; taking a sighting away is her office. */
function judge(c: Ctx, id: string, judgement: z.output<typeof Judgement>) {
  const actor = signedIn(c)
  return transact(c.get('db'), async (trx) => {
    const outcome =
      judgement.decision === 'withdraw'
        ? await withdrawAsManager(trx, actor, id, judgement.reason)
        : await voteOnSighting(trx, actor, id, judgement.decision === 'accept' ? 'confirm' : 'dispute')
    if (!outcome.ok) return outcome
    const action = judgement.decision === 'withdraw' ? 'sighting_withdrawn' : 'sighting_ruled'
    const subject = { kind: 'sighting' as const, id, name: `${outcome.value.productName} at ${outcome.value.storeName}` }
    const { decision } = judgement
    const after = decision === 'withdraw' ? await whatWasSeen(trx, outcome.value, judgement.reason) : { decision }
    await audit(trx, { actor, action, subject, after })
    return outcome
  })
}

/** Which of several reports it was, and why it was taken away: two of one product at one store read the same else. */
async function whatWasSeen(trx: Transaction<Database>, { priceMinor, seenOn, storeId }: SightingRow, reason: string) {
  const [store, { currency }] = [await findStore(trx, storeId), await getInstall(trx)]
  return { price: sayMoney(priceMinor, storeCurrency(store ?? {}, currency), { home: currency }), seen: seenOn, reason }
}

export const moderation = new Hono<Env>()
  .get(
    '/sightings',
    operation('listWaiting', { summary: 'Doubted and disputed sightings, newest first', tag, answers: { 200: WaitingAnswer } }),
    valid('query', strict('Query', paging(50, 200))),
    async (c) => c.json(await listWaiting(c.get('db'), signedIn(c), c.req.valid('query')), 200),
  )
  .post(
    '/sightings/:id',
    operation('judgeSighting', {
      summary: 'Accept or dispute a sighting as a second person, or withdraw it with a reason',
      tag,
      answers: { 200: SightingAnswer },
      refuses: [404, 409, 410, 412],
    }),
    valid('param', ById),
    valid('json', Judgement),
    async (c) => {
      const judged = await judge(c, c.req.valid('param').id, c.req.valid('json'))
      return judged.ok ? c.json(judged.value, 200) : refused(c, judged.refusal)
    },
  )
  .get(
    '/undos',
    operation('listUndos', { summary: 'Who has sightings standing, and what was taken back', tag, answers: { 200: UndosAnswer } }),
    async (c) => {
      const viewer = signedIn(c)
      const undos = await listUndos(c.get('db'), viewer)
      return c.json({ reporters: await reportersWithCounts(c.get('db'), viewer), undos: undos.map(undoView) }, 200)
    },
  )
  .post(
    '/undos',
    operation('undoSightings', {
      summary:
        'Take all sightings of one person back, and what that person found gone; the numbers are those that were shown, and 412 if one changed',
      tag,
      answers: { 201: UndoAnswer },
      refuses: [404, 409, 410, 412],
    }),
    valid('json', Undoing),
    async (c) => {
      const [actor, { personId, ...told }] = [signedIn(c), c.req.valid('json')]
      const undone = await transact(c.get('db'), async (trx) => {
        const outcome = await undoSightings(trx, actor, personId, told, now(c))
        if (outcome.ok)
          await audit(trx, {
            actor,
            action: 'sightings_undone',
            subject: { kind: 'person', id: personId },
            after: { sightings: told.sightings },
          })
        return outcome
      })
      return undone.ok ? c.json(undoView(undone.value), 201) : refused(c, undone.refusal)
    },
  )
  .delete(
    '/undos/:id',
    operation('reverseUndo', {
      summary: 'Put back what was taken back, within 30 days',
      tag,
      answers: { 200: UndoAnswer },
      refuses: [404, 409, 410, 412],
    }),
    valid('param', ById),
    async (c) => {
      const actor = signedIn(c)
      const reversed = await transact(c.get('db'), async (trx) => {
        const outcome = await reverseUndo(trx, actor, c.req.valid('param').id, now(c))
        if (!outcome.ok) return outcome
        const { reporter, sightings } = outcome.value
        await audit(trx, { actor, action: 'sightings_restored', subject: { kind: 'person', id: reporter.id }, after: { sightings } })
        return outcome
      })
      return reversed.ok ? c.json(undoView(reversed.value), 200) : refused(c, reversed.refusal)
    },
  )
