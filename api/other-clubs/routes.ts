import { Hono } from 'hono'
import { OtherClubInput, OtherStoreInput, PublishInput } from '../../core/other-clubs/schema.ts'
import { ok } from '../../core/result.ts'
import { rowId, strict, text } from '../../core/schema.ts'
import { audit } from '../../db/audit.ts'
import { clubAddress } from '../../db/club-address.ts'
import { enqueue } from '../../db/jobs.ts'
import { publishesPrices, setPublishesPrices } from '../../db/open-prices.ts'
import { addOtherClub, findOtherClub, listOtherClubs, matchStore, noteAsked, otherClubRows, removeOtherClub } from '../../db/other-clubs.ts'
import { OtherClubPricesAnswer, OtherClubsAnswer } from '../answers/other-clubs.ts'
import type { Ctx, Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { ById } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { invalid, notFound, problem } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { siteOf } from '../http/site.ts'
import { valid } from '../http/valid.ts'
import { transact } from '../transact.ts'
import { forgetOpenPrices } from './open-prices.ts'
import { OPEN_PRICES_PATH } from './open-prices-route.ts'
import { READ_CLUB_JOB } from './read-club.ts'
import { readEndpoint } from '../outside/endpoint.ts'

const tag = 'Other clubs'
const subject = { kind: 'install' } as const
const answers = { 200: OtherClubsAnswer }
const ByStore = strict('Path', { id: rowId('Id'), key: text('Store', 1, 64) })
const ByProduct = strict('Query', { productId: rowId('Product') })

async function view(c: Ctx) {
  const db = c.get('db')
  const address = `${siteOf(c).origin}${OPEN_PRICES_PATH}`
  return c.json({ publishes: await publishesPrices(db), address, clubs: await listOtherClubs(db) }, 200)
}

/** Whom this club tells its prices, and whose it reads. */
export const otherClubs = new Hono<Env>()
  .get('/', operation('listOtherClubs', { summary: 'Clubs whose prices are read here, and whether ours are told', tag, answers }), view)
  .get(
    '/prices',
    operation('listOtherClubPrices', {
      summary: 'What other clubs told of a product',
      tag,
      answers: { 200: OtherClubPricesAnswer },
    }),
    valid('query', ByProduct),
    async (c) => c.json({ items: await otherClubRows(c.get('db'), c.req.valid('query').productId) }, 200),
  )
  .put(
    '/publishing',
    operation('setPublishing', { summary: 'Tell what members saw to whoever asks, or no longer', tag, answers }),
    valid('json', PublishInput),
    async (c) => {
      const { publishes } = c.req.valid('json')
      await transact(c.get('db'), async (trx) => {
        const before = await publishesPrices(trx)
        await setPublishesPrices(trx, publishes)
        if (before !== publishes)
          await audit(trx, {
            actor: signedIn(c),
            action: publishes ? 'prices_published' : 'prices_unpublished',
            subject,
            before: { publishesPrices: before },
            after: { publishesPrices: publishes },
          })
        return ok(null)
      })
      forgetOpenPrices(c)
      return view(c)
    },
  )
  .post(
    '/',
    operation('addOtherClub', { summary: 'Read the prices that another club tells', tag, answers, refuses: [409] }),
    valid('json', OtherClubInput),
    async (c) => {
      const address = readEndpoint(c.req.valid('json').address)
      if (!address.ok)
        return invalid(c, 'address', 'Address is not one on the open internet. Copy it from the other club’s screen "Other clubs".')
      if (new URL(clubAddress(address.value.href)).origin === siteOf(c).origin)
        return invalid(c, 'address', 'This is your own address. Enter the other club’s.')
      const { clock, wake } = c.get('deps')
      const now = new Date(clock())
      const added = await transact(c.get('db'), async (trx) => {
        const outcome = await addOtherClub(trx, address.value.href)
        if (!outcome.ok) return outcome
        await noteAsked(trx, outcome.value.id, now)
        await enqueue(trx, READ_CLUB_JOB, { clubId: outcome.value.id }, now, signedIn(c).id)
        await audit(trx, {
          actor: signedIn(c),
          action: 'other_club_added',
          subject: { kind: 'other_club', id: outcome.value.id, name: address.value.hostname },
        })
        return outcome
      })
      if (!added.ok) return refused(c, added.refusal)
      wake?.()
      return view(c)
    },
  )
  .post(
    '/:id/read',
    operation('readOtherClub', { summary: 'Read a club’s prices now', tag, answers, refuses: [404, 409] }),
    valid('param', ById),
    async (c) => {
      const { clock, wake } = c.get('deps')
      const now = new Date(clock())
      const club = await findOtherClub(c.get('db'), c.req.valid('param').id)
      if (!club) return notFound(c, 'club')
      if (club.triedAt !== null && now.getTime() - club.triedAt.getTime() < AGAIN_MS)
        return problem(c, 409, 'busy', 'This club was asked a moment ago. Ask again in a minute.')
      await noteAsked(c.get('db'), club.id, now)
      await enqueue(c.get('db'), READ_CLUB_JOB, { clubId: club.id }, now, signedIn(c).id)
      wake?.()
      return view(c)
    },
  )
  .put(
    '/:id/stores/:key',
    operation('matchOtherStore', { summary: 'Say which store of ours a club’s store is', tag, answers, refuses: [404] }),
    valid('param', ByStore),
    valid('json', OtherStoreInput),
    async (c) => {
      const { id, key } = c.req.valid('param')
      const matched = await matchStore(c.get('db'), id, key, c.req.valid('json').storeId)
      return matched.ok ? view(c) : refused(c, matched.refusal)
    },
  )
  .delete(
    '/:id',
    operation('removeOtherClub', { summary: 'Read a club no longer and forget what it told', tag, answers, refuses: [404] }),
    valid('param', ById),
    async (c) => {
      const removed = await transact(c.get('db'), async (trx) => {
        const outcome = await removeOtherClub(trx, c.req.valid('param').id)
        if (outcome.ok)
          await audit(trx, { actor: signedIn(c), action: 'other_club_removed', subject: { kind: 'other_club', name: outcome.value.name } })
        return outcome
      })
      return removed.ok ? view(c) : refused(c, removed.refusal)
    },
  )

/** Somebody else's server: it is not asked again and again. */
const AGAIN_MS = 60_000
