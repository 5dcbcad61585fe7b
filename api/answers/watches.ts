import * as z from 'zod'
import { KINDS } from '../../core/catalog/kinds.ts'
import { CONDITIONS } from '../../core/pricing/sighting.ts'
import { DONE, NOTICE_ANSWERS, type Notice } from '../../core/pricing/watches/notice.ts'
import { WATCHED_CONDITIONS, type WatchView } from '../../core/pricing/watches/watch.ts'
import { BUILD_LETTERS } from '../../core/quote/draft.ts'
import { amount, day, id, instant, version } from './catalog.ts'
import { answer } from './registry.ts'

const requirement = z.strictObject({
  kind: z.enum(KINDS),
  spec: z.string(),
  fits: z.strictObject({ quoteId: id, letter: z.enum(BUILD_LETTERS) }).nullable(),
})

export const WatchAnswer = answer(
  'Watch',
  z.strictObject({
    id,
    productId: id.nullable(),
    requirement: requirement.nullable(),
    limitMinor: amount.nullable(),
    currency: z.string(),
    byDay: day.nullable(),
    conditions: z.array(z.enum(WATCHED_CONDITIONS)),
    regionId: id.nullable(),
    storeIds: z.array(id),
    createdAt: instant,
    endedAt: instant.nullable(),
    version,
    productName: z.string().nullable(),
    kind: z.enum(KINDS),
    quoteNumber: z.string().nullable(),
    regionGone: z.boolean(),
    told: z.int(),
  }) satisfies z.ZodType<WatchView>,
)
export const WatchesAnswer = answer('Watches', z.strictObject({ items: z.array(WatchAnswer), most: z.int() }))

export const NoticeAnswer = answer(
  'Notice',
  z.strictObject({
    id,
    watchId: id,
    productId: id,
    productName: z.string(),
    kind: z.enum(KINDS),
    storeId: id,
    storeName: z.string(),
    condition: z.enum(CONDITIONS),
    priceMinor: amount,
    currency: z.string(),
    totalMinor: amount,
    totalCurrency: z.string(),
    sightingId: id.nullable().meta({ description: 'Null where it is of the store’s own list: nobody saw it.' }),
    withdrawn: z.boolean().describe('The sighting was withdrawn since: no answer is taken any more'),
    seenOn: day,
    until: day.nullable(),
    lastDayStated: z.boolean(),
    toldAt: instant,
    seenAt: instant.nullable(),
    answer: z.enum(NOTICE_ANSWERS).nullable(),
    answeredAt: instant.nullable(),
  }) satisfies z.ZodType<Notice>,
)
export const AnsweredNoticeAnswer = answer(
  'AnsweredNotice',
  z.strictObject({ notice: NoticeAnswer, done: z.enum(DONE).describe('What the answer did to the record') }),
)
export const NoticesAnswer = answer('Notices', z.strictObject({ items: z.array(NoticeAnswer), total: z.int(), notSeen: z.int() }))
export const NoticeCountAnswer = answer('NoticeCount', z.strictObject({ total: z.int(), notSeen: z.int() }))
export const FeedLinkAnswer = answer(
  'FeedLink',
  z.strictObject({ createdAt: instant.nullable(), atom: z.string().nullable(), json: z.string().nullable() }),
)
