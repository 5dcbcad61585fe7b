import { Hono } from 'hono'
import { feedTokenOf, removeFeedToken, replaceFeedToken } from '../../db/feed-tokens.ts'
import { FeedLinkAnswer } from '../answers/watches.ts'
import { newToken, tokenHash } from '../auth/tokens.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { operation } from '../http/operation.ts'
import { linkOrigin } from '../http/site.ts'
import { feedPath } from './watch-feed.ts'

const tag = 'Watches'

/** The address of one's own feed: told once, when it is made. */
export const feedLink = new Hono<Env>()
  .get('/', operation('getFeedLink', { summary: 'Whether you have a feed address', tag, answers: { 200: FeedLinkAnswer } }), async (c) => {
    const createdAt = await feedTokenOf(c.get('db'), signedIn(c))
    return c.json({ createdAt: createdAt?.toISOString() ?? null, atom: null, json: null }, 200)
  })
  .post(
    '/',
    operation('makeFeedLink', {
      summary: 'Make a new feed address; the old one opens nothing any more',
      tag,
      answers: { 200: FeedLinkAnswer },
    }),
    async (c) => {
      const [token, now, origin] = [newToken(), new Date(c.get('deps').clock()), linkOrigin(c)]
      await replaceFeedToken(c.get('db'), signedIn(c), tokenHash(token), now)
      const at = (form: 'atom' | 'json'): string | null => (origin === null ? null : origin + feedPath(token, form))
      return c.json({ createdAt: now.toISOString(), atom: at('atom'), json: at('json') }, 200)
    },
  )
  .delete('/', operation('removeFeedLink', { summary: 'Switch the feed off', tag, answers: { 204: null } }), async (c) => {
    await removeFeedToken(c.get('db'), signedIn(c))
    return c.body(null, 204)
  })
