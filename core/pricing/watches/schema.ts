import * as z from 'zod'
import { KindSchema } from '../../catalog/schema.ts'
import { parseSpecFilter, spellSpecFilter } from '../../catalog/spec-filter.ts'
import { BUILD_LETTERS } from '../../quote/draft.ts'
import { civilDate, list, minor, oneOf, rowId, strict } from '../../schema.ts'
import { NOTICE_ANSWERS } from './notice.ts'
import { WATCHED_CONDITIONS, type NewWatch, type WatchedRequirement, type WatchTerms } from './watch.ts'

const phoneId = (what: string) =>
  z.uuidv7({ error: `${what} is a UUID of version 7, made once on the phone and sent again with every repeat.` }).toLowerCase()

/** In one spelling, so that two that ask the same are the same. */
const requirement = strict('Requirement', {
  kind: KindSchema,
  spec: z
    .string({ error: 'What is asked of the spec is text.' })
    .max(500, { error: 'What is asked of the spec has at most 500 characters.' })
    .default(''),
  fits: strict('Build to fit', { quoteId: rowId('Quote'), letter: oneOf('Build', BUILD_LETTERS) })
    .nullable()
    .default(null),
}).transform((asked, context): WatchedRequirement => {
  const tests = parseSpecFilter(asked.kind, asked.spec)
  if (tests.ok) return { ...asked, spec: spellSpecFilter(tests.value) }
  context.addIssue({ code: 'custom', path: ['spec'], message: tests.refusal.words })
  return z.NEVER
})

const terms = {
  limitMinor: minor('Price', 1).nullable().default(null),
  byDay: civilDate('By when').nullable().default(null),
  conditions: list('Conditions', oneOf('Condition', WATCHED_CONDITIONS), 1, WATCHED_CONDITIONS.length)
    .transform((chosen) => WATCHED_CONDITIONS.filter((one) => chosen.includes(one)))
    .default(['new', 'clearance']),
  regionId: rowId('Region').nullable().default(null),
  storeIds: list('Stores', rowId('Store'), 0, 100)
    .transform((ids) => [...new Set(ids)])
    .default([]),
}
const NO_LIMIT = 'Say at or under which price, or by which day it is wanted: then it is told at the price to buy at.'

/** What is changed of a watch. What it is of stays: that would be another watch. */
export const WatchTermsInput = strict('Watch', terms).refine(({ limitMinor, byDay }) => limitMinor !== null || byDay !== null, {
  error: NO_LIMIT,
  path: ['limitMinor'],
}) satisfies z.ZodType<WatchTerms>

/** A watch as a phone sends it. That a day is not past is told where there is a clock. */
export const WatchInput = strict('Watch', {
  id: phoneId('Id'),
  productId: rowId('Product').nullable().default(null),
  requirement: requirement.nullable().default(null),
  ...terms,
}).superRefine(({ productId, requirement: asked, limitMinor, byDay }, context) => {
  if ((productId === null) === (asked === null))
    context.addIssue({ code: 'custom', path: ['productId'], message: 'A watch is of a product or of a requirement: name one of the two.' })
  if (limitMinor === null && byDay === null) context.addIssue({ code: 'custom', path: ['limitMinor'], message: NO_LIMIT })
}) satisfies z.ZodType<NewWatch>

/** What somebody found at the store; the id is that of the sighting which "still there" posts. */
export const NoticeAnswerInput = strict('Answer', { answer: oneOf('Answer', NOTICE_ANSWERS), sightingId: phoneId('Sighting') })
export const SeenInput = strict('Seen', { upTo: z.iso.datetime({ error: 'Up to is an instant like 2026-10-20T12:00:00Z.' }) })
