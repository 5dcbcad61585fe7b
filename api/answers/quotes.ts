import * as z from 'zod'
import type { Customer, QuoteListRow, QuoteView, Reading, SetupView } from '../../core/quote/quote-view.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import { OwnedLineSchema, DiscountSchema, NeedSchema, QuoteDraftSchema } from '../../core/quote/schema.ts'
import { ConditionsSchema } from '../../core/sizing/schema.ts'
import { ReaderUnitsSchema } from '../../core/install/schema.ts'
import { AssembledBuildAnswer, letter } from './builds.ts'
import { day, id, instant, maybeAmount, ProductAnswer, RegionAnswer, StoreAnswer, version } from './catalog.ts'
import { InstallPlain } from './people.ts'
import { CurrencyRateAnswer, PriceViewAnswer } from './pricing.ts'
import { answer } from './registry.ts'
import { SetupPlanAnswer } from './sizing.ts'

const state = z.enum(['draft', 'issued', 'accepted', 'declined', 'lapsed', 'withdrawn'])

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
  builds: z.array(AssembledBuildAnswer),
  included: z.array(z.string()),
  notIncluded: z.array(z.string()),
  cautions: z.array(z.string()),
  note: z.string(),
  discount: DiscountSchema.nullable().optional(),
  moneyNotes: z.array(z.string()).optional(),
  since: z
    .strictObject({
      version: z.string(),
      inShort: z.string(),
      builds: z.array(z.strictObject({ letter, name: z.string(), changes: z.array(z.string()) })),
    })
    .optional()
    .meta({ description: 'What is otherwise than in the version before, in words; absent in a first version.' }),
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
  ticks: z.array(z.strictObject({ stepId: z.string(), on: day, onWord: z.boolean() })),
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
    ticks: z.array(z.strictObject({ stepId: z.string(), on: day, onWord: z.boolean() })),
    readings: z.array(ReadingAnswer),
    today: day,
  }),
)
