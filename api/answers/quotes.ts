import * as z from 'zod'
import { KINDS, SLOTS } from '../../core/catalog/kinds.ts'
import { OTHER_FORMS } from '../../core/catalog/tank-shape.ts'
import type { ByDate } from '../../core/pricing/by-date.ts'
import type { LineAdvice } from '../../core/pricing/line-advice.ts'
import type { BuildCost } from '../../core/pricing/tiers.ts'
import { CONDITIONS } from '../../core/pricing/sighting.ts'
import { BUILD_LETTERS } from '../../core/quote/draft.ts'
import type { Customer, QuoteListRow, QuoteView, Reading, SetupView } from '../../core/quote/quote-view.ts'
import type { AssembledBuild, RevisionDocument } from '../../core/quote/revision.ts'
import { OwnedLineSchema, DiscountSchema, NeedSchema, QuoteDraftSchema } from '../../core/quote/schema.ts'
import { ConditionsSchema } from '../../core/sizing/schema.ts'
import { ReaderUnitsSchema } from '../../core/install/schema.ts'
import { amount, day, id, instant, ProductAnswer, RegionAnswer, StoreAnswer, version } from './catalog.ts'
import { InstallPlain } from './people.ts'
import { CurrencyRateAnswer, PriceViewAnswer } from './pricing.ts'
import { LikelyAnswer } from './outlook.ts'
import { answer } from './registry.ts'
import { SetupPlanAnswer, SizingAnswer } from './sizing.ts'

const letter = z.enum(BUILD_LETTERS)
const state = z.enum(['draft', 'issued', 'accepted', 'declined', 'lapsed', 'withdrawn'])
const maybeAmount = amount.nullable()

export const CustomerAnswer = answer(
  'Customer',
  z.strictObject({
    id,
    name: z.string(),
    reach: z.string(),
    note: z.string(),
    gear: z.array(OwnedLineSchema),
    erasedOn: day.nullable(),
    version,
  }) satisfies z.ZodType<Customer>,
)
export const CustomersAnswer = answer('Customers', z.strictObject({ items: z.array(CustomerAnswer) }))

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
const assembled = answer(
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

const inputs = {
  draft: QuoteDraftSchema,
  products: z.array(ProductAnswer),
  stores: z.array(StoreAnswer),
  prices: z.array(PriceViewAnswer),
  install: InstallPlain,
  rates: z.array(CurrencyRateAnswer).optional(),
  regions: z.array(RegionAnswer).optional(),
  asOf: day,
}
const paper = {
  format: z.literal(1),
  number: z.string(),
  revision: z.int(),
  issuedOn: day,
  standsUntil: day,
  title: z.string(),
  advisor: z.string(),
  need: NeedSchema,
  conditions: ConditionsSchema,
  suggestion: z.strictObject({ buildId: z.string(), reason: z.string() }).nullable(),
  builds: z.array(assembled),
  included: z.array(z.string()),
  notIncluded: z.array(z.string()),
  cautions: z.array(z.string()),
  note: z.string(),
  discount: DiscountSchema.nullable().optional(),
  moneyNotes: z.array(z.string()).optional(),
}
export const RevisionAnswer = answer(
  'Revision',
  z.strictObject({ ...paper, inputs: z.strictObject(inputs) }) satisfies z.ZodType<RevisionDocument>,
)
/** What a customer sees of it: without the inputs, in which other stores' sightings stand. */
const seenByCustomer = answer('IssuedQuote', z.strictObject(paper) satisfies z.ZodType<Omit<RevisionDocument, 'inputs'>>)

const given = z.strictObject({
  revision: z.int(),
  answer: z.enum(['accepted', 'declined']),
  letter: letter.nullable(),
  note: z.string(),
  at: instant,
})

export const QuoteAnswer = answer(
  'Quote',
  z.strictObject({
    ...inputs,
    id,
    number: z.string().nullable(),
    state,
    version,
    customer: CustomerAnswer,
    advisor: z.string(),
    savedAt: instant,
    revisions: z.array(
      z.strictObject({
        revision: z.int(),
        issuedOn: day,
        standsUntil: day,
        totals: z.array(z.strictObject({ letter, name: z.string(), todayMinor: maybeAmount })),
      }),
    ),
    answer: given.nullable(),
    links: z.strictObject({ quote: z.string(), setup: z.string() }).nullable(),
  }) satisfies z.ZodType<QuoteView>,
)

const listRow = z.strictObject({
  id,
  number: z.string().nullable(),
  title: z.string(),
  customerName: z.string(),
  state,
  advisor: z.string(),
  savedAt: instant,
  standsUntil: day.nullable(),
  acceptedLetter: letter.nullable(),
  todayMinor: z.array(maybeAmount),
}) satisfies z.ZodType<QuoteListRow>
export const QuoteListAnswer = answer('QuoteList', z.strictObject({ rows: z.array(listRow) }))

const setup = z.strictObject({
  id,
  quoteNumber: z.string(),
  customerName: z.string(),
  letter,
  startedOn: day.nullable(),
  ticks: z.array(z.strictObject({ stepId: z.string(), on: day })),
  stepCount: z.int(),
  link: z.string().nullable(),
}) satisfies z.ZodType<SetupView>
/** Null where links are off. */
export const SetupLinkAnswer = answer('SetupLink', z.strictObject({ link: z.string().nullable() }))
export const SetupsAnswer = answer('Setups', z.strictObject({ items: z.array(setup) }))

export const CustomerViewAnswer = answer(
  'CustomerWithWork',
  z.strictObject({ customer: CustomerAnswer, quotes: z.array(listRow), setups: z.array(setup) }),
)
export type CustomerView = z.output<typeof CustomerViewAnswer>

export const LinkedQuoteAnswer = answer(
  'LinkedQuote',
  z.strictObject({
    document: seenByCustomer,
    install: InstallPlain,
    customerName: z.string().nullable(),
    state,
    supersededBy: z.int().nullable(),
    answer: given.nullable(),
    /** Address of the setup page; null where links are off. */
    setupLink: z.string().nullable(),
    today: day,
  }),
)
export const GivenAnswer = answer('QuoteAnswer', given)

export const ReadingAnswer = answer(
  'Reading',
  z.strictObject({
    id,
    takenOn: day,
    ammoniaMgL: z.number().nullable(),
    nitriteMgL: z.number().nullable(),
    nitrateMgL: z.number().nullable(),
    ph: z.number().nullable(),
    khDegrees: z.number().nullable(),
    temperatureC: z.number().nullable(),
    note: z.string(),
  }) satisfies z.ZodType<Reading>,
)
export const LinkedSetupAnswer = answer(
  'LinkedSetup',
  z.strictObject({
    plan: SetupPlanAnswer,
    quoteWithdrawn: z.boolean().describe('The quote it was made for was taken back: ask before buying by it'),
    units: ReaderUnitsSchema,
    contact: z.string(),
    startedOn: day.nullable(),
    ticks: z.array(z.strictObject({ stepId: z.string(), on: day })),
    readings: z.array(ReadingAnswer),
    today: day,
  }),
)
