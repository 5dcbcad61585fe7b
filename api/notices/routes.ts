import { Hono } from 'hono'
import { NoticeAnswerInput, SeenInput } from '../../core/pricing/watches/schema.ts'
import { strict } from '../../core/schema.ts'
import { countNotices, listNotices, markSeen } from '../../db/notices.ts'
import { AnsweredNoticeAnswer, NoticeAnswer, NoticeCountAnswer, NoticesAnswer } from '../answers/watches.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { ById, paging } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { answerOwn, takeBackGone } from './answer.ts'

const tag = 'Watches'
const PageQuery = strict('Query', paging(50, 200))

/** Everybody's own. */
export const notices = new Hono<Env>()
  .get(
    '/',
    operation('listNotices', { summary: 'What your watches told you, newest first', tag, answers: { 200: NoticesAnswer } }),
    valid('query', PageQuery),
    async (c) => {
      const items = await listNotices(c.get('db'), signedIn(c), c.req.valid('query'))
      return c.json({ items, ...(await countNotices(c.get('db'), signedIn(c))) }, 200)
    },
  )
  .get(
    '/count',
    operation('countNotices', { summary: 'How many you have not looked at', tag, answers: { 200: NoticeCountAnswer } }),
    async (c) => c.json(await countNotices(c.get('db'), signedIn(c)), 200),
  )
  .post(
    '/seen',
    operation('markNoticesSeen', {
      summary: 'You have looked at all that was told up to an instant',
      tag,
      answers: { 200: NoticeCountAnswer },
    }),
    valid('json', SeenInput),
    async (c) => {
      const now = new Date(c.get('deps').clock())
      await markSeen(c.get('db'), signedIn(c), new Date(c.req.valid('json').upTo), now)
      return c.json(await countNotices(c.get('db'), signedIn(c)), 200)
    },
  )
  .post(
    '/:id/answer',
    operation('answerNotice', {
      summary: 'Say that the deal is still there, or gone',
      tag,
      answers: { 200: AnsweredNoticeAnswer },
      refuses: [404, 409, 410, 412, 429],
    }),
    valid('param', ById),
    valid('json', NoticeAnswerInput),
    async (c) => {
      const { answer, sightingId } = c.req.valid('json')
      const answered = await answerOwn(c, c.req.valid('param').id, answer, sightingId)
      return answered.ok ? c.json(answered.value, 200) : refused(c, answered.refusal)
    },
  )
  .delete(
    '/:id/answer',
    operation('takeBackGone', {
      summary: 'Take back that the deal is gone; it stays said where another notice of one’s own says so too',
      tag,
      answers: { 200: NoticeAnswer },
      refuses: [404],
    }),
    valid('param', ById),
    async (c) => {
      const taken = await takeBackGone(c, c.req.valid('param').id)
      return taken.ok ? c.json(taken.value, 200) : refused(c, taken.refusal)
    },
  )
