import * as z from 'zod'
import { SLOT_OF, SLOTS, type Kind, type Slot } from '../catalog/kinds.ts'
import { SpecSchema } from '../catalog/schema.ts'
import type { Spec } from '../catalog/spec.ts'
import type { Discount } from '../pricing/discount.ts'
import { civilDate, count, list, minor, oneOf, partId, rowId, strict, text, yesNo } from '../schema.ts'
import { NeedExactSchema } from '../sizing/schema.ts'
import { BUILD_LETTERS, type Build, type BuildLine, type OwnedLine, type QuoteDraft } from './draft.ts'
import type { Need } from './need.ts'
import type { OurService } from './our-service.ts'
import type { Deposit } from './terms.ts'

/** Shortest and longest tank of the catalog's limits: a wish outside them can never be met. */
const wishedLength = z
  .number({ error: 'Length is a plain number of mm.' })
  .min(100, {
    error: (issue) => `Length is ${String(issue.input)} mm. A tank is between 100 and 4000 mm long. Was it in inches or centimetres?`,
  })
  .max(4000, {
    error: (issue) => `Length is ${String(issue.input)} mm. A tank is between 100 and 4000 mm long. Check the figure and its unit.`,
  })

/** A need as the advisor is still asking for it: texts may be empty. The server holds its temperatures against the marks of its livestock group. */
export const NeedSchema = strict('Need', {
  lengthMm: wishedLength.nullable().default(null),
  commonSizeId: text('Common size', 1, 60).nullable().default(null),
  place: text('Place', 0, 200).default(''),
  livestockId: text('Livestock group', 1, 60),
  livestockNote: text('What will live in it', 0, 500).default(''),
  budgetMinor: minor('Budget', 1).nullable().default(null),
  byDate: civilDate('By when').nullable().default(null),
  weekWaitMinor: minor('What a week’s wait is worth', 1).nullable().optional(),
  look: oneOf('Look', ['standard', 'kit', 'rimless', 'any']).default('any'),
  storeIds: list('Stores', rowId('Store'), 0, 100).default([]),
  regionId: rowId('Region').nullable().optional(),
  usedAccepted: yesNo('Used accepted').default(false),
  exact: NeedExactSchema.default({}),
}) satisfies z.ZodType<Need>

const quantity = count('Quantity', 1, 999)
const slots = SLOTS as readonly [Slot, ...Slot[]]
const note = text('Note', 0, 500).default('')
const besideKit = yesNo('Beside the kit’s').optional()

/** The kind that fills each slot: its spec is what someone reads off owned gear. */
const KIND_OF = Object.fromEntries(Object.entries(SLOT_OF).map(([kind, slot]) => [slot, kind])) as Record<Slot, Exclude<Kind, 'kit'>>
const ownedLine = (slot: Slot) =>
  strict('Line', {
    id: partId('Line id'),
    answer: z.literal('owned'),
    slot: z.literal(slot),
    productId: rowId('Product').nullable().default(null),
    description: text('Description', 0, 200).default(''),
    quantity: quantity.default(1),
    besideKit,
    spec: (SpecSchema[KIND_OF[slot]] as unknown as z.ZodType<Spec, Spec>).nullable().default(null),
  })
const [firstSlot, ...otherSlots] = slots

/** Gear that is owned: an answer in a build, and what is kept with its owner. */
export const OwnedLineSchema = z.discriminatedUnion('slot', [ownedLine(firstSlot), ...otherSlots.map(ownedLine)], {
  error: `Slot is one of: ${SLOTS.join(', ')}.`,
}) satisfies z.ZodType<OwnedLine>

/** One answer in a build. Owned gear's spec is checked by the kind of its slot. */
export const BuildLineSchema = z.discriminatedUnion(
  'answer',
  [
    strict('Line', {
      id: partId('Line id'),
      answer: z.literal('buy'),
      productId: rowId('Product'),
      quantity,
      storeId: rowId('Store').nullable().default(null),
      note,
      besideKit,
    }),
    OwnedLineSchema,
    strict('Line', {
      id: partId('Line id'),
      answer: z.literal('not_needed'),
      slot: oneOf('Slot', slots),
      reason: text('Reason', 0, 300).default(''),
    }),
  ],
  { error: 'Answer is one of: buy, owned, not_needed.' },
) satisfies z.ZodType<BuildLine>

/** A service at our own price, which the advisor writes. */
export const OurServiceSchema = strict('Service', {
  id: partId('Service id'),
  name: text('Service', 1, 120),
  quantity,
  priceMinor: minor('Our price', 0),
}) satisfies z.ZodType<OurService>

export const BuildSchema = strict('Build', {
  id: partId('Build id'),
  name: text('Name of a build', 0, 80).default(''),
  why: text('Why', 0, 300).default(''),
  lines: list('Lines', BuildLineSchema, 0, 60).default([]),
  services: list('Services', OurServiceSchema, 0, 12).optional(),
}) satisfies z.ZodType<Build>

/** A share of something, in hundredths of a per cent with at most two decimals. */
const share = (label: string) =>
  z
    .number({ error: `${label} is a number of hundredths of a per cent: 1000 for 10 %.` })
    .min(0, { error: `${label} is not below 0.` })
    .max(10_000, { error: `${label} is at most 10000 (100 %). It is in hundredths of a per cent: 1000 for 10 %.` })
    .refine((basisPoints) => Math.abs(basisPoints * 100 - Math.round(basisPoints * 100)) < 1e-6, {
      error: `${label} has at most 4 decimals as a per cent.`,
    })
const discounted = { storeId: rowId('Store').nullable().default(null), reason: text('Reason of the discount', 0, 200).default('') }

export const DiscountSchema = z.discriminatedUnion(
  'kind',
  [
    strict('Discount', { kind: z.literal('amount'), amountMinor: minor('Discount', 0), ...discounted }),
    strict('Discount', { kind: z.literal('share'), basisPoints: share('Discount'), ...discounted }),
  ],
  { error: 'Kind of discount is one of: amount, share.' },
) satisfies z.ZodType<Discount>

export const DepositSchema = z.discriminatedUnion(
  'kind',
  [
    strict('Deposit', { kind: z.literal('amount'), amountMinor: minor('Deposit', 0) }),
    strict('Deposit', { kind: z.literal('share'), basisPoints: share('Deposit') }),
  ],
  { error: 'Kind of deposit is one of: amount, share.' },
) satisfies z.ZodType<Deposit>

/** Ids that stand twice, so that a line's price or answer could land on the wrong one. */
const repeated = (ids: string[]): string[] => [...new Set(ids.filter((id, index) => ids.indexOf(id) !== index))]

function oneMeaning(draft: QuoteDraft, context: z.RefinementCtx): void {
  const fault = (path: Array<string | number>, message: string) => context.addIssue({ code: 'custom', path, message })
  for (const id of repeated(draft.builds.map((build) => build.id))) fault(['builds'], `Two builds have the id "${id}". Give each its own.`)
  draft.builds.forEach((build, index) => {
    for (const id of repeated([...build.lines, ...(build.services ?? [])].map((line) => line.id)))
      fault(['builds', index, 'lines'], `Two lines of this build have the id "${id}". Give each its own.`)
  })
  if (draft.suggestion && !draft.builds.some((build) => build.id === draft.suggestion?.buildId)) {
    fault(['suggestion', 'buildId'], 'The suggested build is not in this quote. Choose one that is, or none.')
  }
}

/** A quote while it is edited: may be unfinished, never ambiguous. What an issued one must have is asked at issue. */
export const QuoteDraftSchema = strict('Quote', {
  title: text('Title', 0, 120).default(''),
  need: NeedSchema,
  builds: list('Builds', BuildSchema, 1, 4),
  suggestion: strict('Suggestion', { buildId: partId('Build id'), reason: text('Reason', 0, 500).default('') })
    .nullable()
    .default(null),
  standsUntil: civilDate('Stands until').nullable().default(null),
  units: oneOf('Units on paper', ['metric', 'us']).optional(),
  note: text('Note', 0, 2000).default(''),
  discount: DiscountSchema.nullable().optional(),
  deposit: DepositSchema.nullable().optional(),
}).superRefine(oneMeaning) satisfies z.ZodType<QuoteDraft>

export const CustomerInput = strict('Customer', {
  name: text('Name', 1, 120),
  reach: text('How to reach them', 0, 200).default(''),
  note: text('Note', 0, 2000).default(''),
  /** Left out, what is kept stays. */
  gear: list('Gear', OwnedLineSchema, 0, 60).optional(),
})
export type CustomerInput = z.output<typeof CustomerInput>

/** A customer's answer to one revision. Accepting names the build; declining names none. */
export const AnswerInput = strict('Answer', {
  revision: count('Version', 1, 9999),
  answer: oneOf('Answer', ['accepted', 'declined']),
  letter: oneOf('Build', BUILD_LETTERS).nullable().default(null),
  note: text('Note', 0, 1000).default(''),
}).refine((answer) => answer.answer === 'declined' || answer.letter !== null, { path: ['letter'], error: 'Choose which build you accept.' })
export type AnswerInput = z.output<typeof AnswerInput>
