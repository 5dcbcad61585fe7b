import * as z from 'zod'
import { KINDS, SLOTS } from '../../core/catalog/kinds.ts'
import { OTHER_FORMS } from '../../core/catalog/tank-shape.ts'
import type { ByDate } from '../../core/pricing/by-date.ts'
import type { LineAdvice } from '../../core/pricing/line-advice.ts'
import { CONDITIONS } from '../../core/pricing/sighting.ts'
import type { BuildCost } from '../../core/pricing/tiers.ts'
import { BUILD_LETTERS } from '../../core/quote/draft.ts'
import type { AssembledBuild } from '../../core/quote/revision.ts'
import { amount, day, id, maybeAmount } from './catalog.ts'
import { LikelyAnswer } from './outlook.ts'
import { answer } from './registry.ts'
import { SetupPlanAnswer, SizingAnswer } from './sizing.ts'

export const letter = z.enum(BUILD_LETTERS)

const sum = {
  goodsMinor: amount,
  discountMinor: amount.optional(),
  deliveryMinor: amount,
  servicesMinor: amount.optional(),
  taxMinor: amount,
  taxIncludedMinor: amount.optional(),
  totalMinor: amount,
}
const tier = z.discriminatedUnion('complete', [
  z.strictObject({ complete: z.literal(true), ...sum }),
  z.strictObject({
    complete: z.literal(false),
    missing: z.array(
      z.strictObject({ lineId: z.string(), name: z.string(), why: z.enum(['no_price', 'cannot_be_delivered', 'archived', 'no_rate']) }),
    ),
  }),
])
const receiptTax = z.strictObject({ name: z.string().nullable(), basisPoints: z.number(), taxableMinor: amount, taxMinor: amount })
const cost = z.strictObject({
  lines: z.array(
    z.strictObject({
      lineId: z.string(),
      productId: id,
      quantity: z.int(),
      storeId: id.nullable(),
      fullMinor: maybeAmount,
      todayMinor: maybeAmount,
      bestSeenMinor: maybeAmount,
      unitTodayMinor: maybeAmount,
      unitFullMinor: maybeAmount,
      condition: z.enum(CONDITIONS).nullable(),
      seenOn: day.nullable(),
      holdsUntil: day.nullable(),
      lastDayStated: z.boolean(),
      age: z.enum(['current', 'ageing']).nullable(),
      reporters: z.int(),
      otherClub: z.string().optional(),
      sightingIds: z.array(id),
      returnDays: z.int().nullable().optional(),
      warrantyMonths: z.int().nullable().optional(),
      best: z.strictObject({ storeId: id, priceMinor: amount, seenOn: day, sightingId: id }).nullable(),
    }),
  ),
  receipts: z.array(z.strictObject({ storeId: id, taxBasisPoints: z.number(), taxes: z.array(receiptTax).optional(), ...sum })),
  full: tier,
  today: tier,
  bestSeen: tier,
}) satisfies z.ZodType<BuildCost>

const byDate = z.strictObject({
  until: day,
  learnedOn: day,
  expectedMinor: amount,
  low10Minor: amount,
  high90Minor: amount,
  waits: z.int(),
}) satisfies z.ZodType<ByDate>
const lineAdvice = z.strictObject({
  lineId: z.string(),
  advice: z.enum(['buy_now', 'no_hurry', 'buy_when_convenient', 'wait']),
  title: z.string(),
  words: z.string(),
  reason: z.string().optional().meta({ description: 'Why, in one sentence; absent in what was issued before it was told.' }),
  elsewhere: z.string().optional().meta({
    description: 'Where it costs less today than it is to be bought at, and why it is not bought there; absent where it does nowhere.',
  }),
  likely: LikelyAnswer.nullable(),
  likelyTagMinor: maybeAmount.optional().meta({ description: 'What the tag of one then shows at most; null where tags differ.' }),
  tagMinor: maybeAmount,
  by: day.nullable(),
  returnsEndOn: day.nullable(),
}) satisfies z.ZodType<LineAdvice>

const drawing = z.strictObject({
  lengthMm: z.number(),
  widthMm: z.number(),
  heightMm: z.number(),
  waterBelowRimMm: z.number(),
  substrateDepthMm: z.number(),
  standHeightMm: z.number().nullable(),
  style: z.enum(['rimmed', 'rimless', 'braced']),
  plan: z
    .strictObject({ form: z.enum(OTHER_FORMS), bowMm: z.number().optional(), endMm: z.number().optional() })
    .optional()
    .meta({ description: 'Shape seen from above, with the measures that draw it; absent is rectangular.' }),
})
/** A build as it was worked out: its rows, what it costs, what it is advised to wait for, its sizing and its checklist. */
export const AssembledBuildAnswer = answer(
  'AssembledBuild',
  z.strictObject({
    id: z.string(),
    letter,
    name: z.string(),
    why: z.string(),
    suggested: z.boolean(),
    rows: z.array(
      z.strictObject({
        slot: z.enum(SLOTS),
        answer: z.enum(['buy', 'kit', 'in_kit', 'owned', 'not_needed', 'missing', 'our_price']),
        lineId: z.string().nullable(),
        kind: z.enum(KINDS).nullable(),
        text: z.string(),
        productId: id.nullable(),
        quantity: z.int(),
        required: z.boolean(),
        needs: z.string().nullable(),
        amount: z.strictObject({ words: z.string(), short: z.boolean() }).optional(),
        notes: z.array(z.string()).optional(),
        lineNote: z.string().optional(),
        ourPriceMinor: amount.optional(),
      }),
    ),
    cost,
    byDate: byDate.nullable().optional(),
    advice: z.array(lineAdvice).optional(),
    kits: z.array(z.string()).optional(),
    depositMinor: maybeAmount.optional(),
    report: SizingAnswer,
    plan: SetupPlanAnswer,
    drawing: drawing.nullable(),
  }) satisfies z.ZodType<AssembledBuild>,
)
