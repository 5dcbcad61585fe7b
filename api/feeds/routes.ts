import { createHash } from 'node:crypto'
import { Hono } from 'hono'
import { getInstall } from '../../db/install.ts'
import { personOfFeed } from '../../db/feed-tokens.ts'
import { listNotices } from '../../db/notices.ts'
import { tokenHash } from '../auth/tokens.ts'
import type { Ctx, Env } from '../context.ts'
import { operation } from '../http/operation.ts'
import { problem, problemBody, ProblemError } from '../http/problem.ts'
import { linkOrigin } from '../http/site.ts'
import { tallies } from '../http/tally.ts'
import { unchanged } from '../http/versions.ts'
import { noteWrongLink } from '../http/wrong-links.ts'
import { MOST_IN_FEED, watchFeed } from './watch-feed.ts'

const tag = 'Watches'
const described = { tag, refuses: [404, 429] }
/** Reader programs ask every quarter of an hour or so, and from a few devices. */
const MOST_READS = 120
const READ_WINDOW_MS = 60 * 60_000
const KEPT_S = 300
const tallyOf = tallies(READ_WINDOW_MS)

const TYPES = { atom: 'application/atom+xml; charset=utf-8', json: 'application/feed+json; charset=utf-8' } as const

/** Of a feed that nobody has told yet, the day that all of them began. */
const NEVER = new Date('2026-01-01T00:00:00Z')

/** Asks about every token in the same way and by its hash, so that how long a wrong one takes says nothing of the right ones. */
async function answerFeed(c: Ctx, form: keyof typeof TYPES) {
  const token = c.req.param('token') ?? ''
  const person = await personOfFeed(c.get('db'), tokenHash(token))
  const origin = linkOrigin(c)
  if (person === undefined || origin === null) {
    noteWrongLink(c)
    return problem(c, 404, 'not_found', 'There is no such feed. Its address may have been replaced by a newer one.')
  }
  demandFewReads(c, person.id)
  const notices = await listNotices(c.get('db'), person, { limit: MOST_IN_FEED, offset: 0 })
  const [newest] = notices
  const { name } = await getInstall(c.get('db'))
  const feed = watchFeed({ installName: name, origin, token, updated: newest ? new Date(newest.toldAt) : NEVER, notices, form })
  const text = form === 'atom' ? feed.atom1() : feed.json1()
  const etag = `"${createHash('sha256').update(text).digest('base64url').slice(0, 22)}"`
  c.header('ETag', etag)
  c.header('Cache-Control', `private, max-age=${KEPT_S}`)
  c.header('X-Robots-Tag', 'noindex, nofollow')
  if (unchanged(c, etag)) return c.body(null, 304)
  c.header('Content-Type', TYPES[form])
  return c.body(text, 200)
}

function demandFewReads(c: Ctx, personId: string): void {
  const { clock } = c.get('deps')
  const tally = tallyOf(c.get('deps'))
  const seconds = tally.waitS(personId, MOST_READS, clock())
  if (seconds > 0) {
    const words = `This feed was read ${MOST_READS} times within an hour. Have your reader ask less often.`
    throw new ProblemError(problemBody(429, 'too_many', words), { 'Retry-After': String(seconds) })
  }
  tally.add(personId, clock())
}

/** What somebody was told, for a reader program: the token in the address stands for the sign-in. */
export const feeds = new Hono<Env>()
  .get(
    '/:token/deals.atom',
    operation('readAtomFeed', { ...described, summary: 'Deals as an Atom feed', answers: { 200: 'application/atom+xml', 304: null } }),
    (c) => answerFeed(c, 'atom'),
  )
  .get(
    '/:token/deals.json',
    operation('readJsonFeed', { ...described, summary: 'Deals as a JSON feed', answers: { 200: 'application/feed+json', 304: null } }),
    (c) => answerFeed(c, 'json'),
  )
