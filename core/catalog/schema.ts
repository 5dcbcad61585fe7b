import * as z from 'zod'
import { countryName, NO_COUNTRY_WORDS } from '../country-name.ts'
import { RATE_STEPS, rateSteps } from '../money.ts'
import { count, fieldShape, list, minor, oneOf, optionalText, rowId, strict, text, yesNo } from '../schema.ts'
import { bareGtin, isGtin } from './gtin.ts'
import { KINDS, type Kind } from './kinds.ts'
import type { Product } from './product.ts'
import { planFault } from '../sizing/tank-plan.ts'
import { kindWords, SPEC_FIELDS } from './spec-fields.ts'
import type { SumpSpec } from './appliance-spec.ts'
import type { FilterSpec, SpecOf } from './spec.ts'
import type { DeliveryRule, Store } from './store.ts'

export const KindSchema = oneOf('Kind', KINDS)

/** Longest of each name in the mocks is about 60 characters; twice that still fits two lines of a quote. */
const NAME_LENGTH = 120
const NOTE_LENGTH = 2000
/** Highest general consumption tax in force anywhere is 27 %; above 30 % a decimal has slipped. */
const MOST_TAX_BASIS_POINTS = 3000

/** Fifty years: longer ones are told as "for life" by their makers, and a slipped figure is likelier. */
const MOST_WARRANTY_MONTHS = 600
const warrantyMonths = count('Warranty in months', 0, MOST_WARRANTY_MONTHS).nullable().optional()

const PLAN_FAULTS = {
  not_round: {
    field: 'widthMm',
    says: () => 'A cylinder or a quarter round is as deep as it is long. Enter its diameter, or the length of one back, as both.',
  },
  bow_too_deep: {
    field: 'bowMm',
    says: (most: number) =>
      `Bow is at most ${most} mm for this length and depth: how far the middle of the front stands out before its ends.`,
  },
  ends_too_deep: {
    field: 'endMm',
    says: (most: number) => `Depth of the ends is at most ${most} mm for this length and depth: the short panes on either back.`,
  },
} as const

/** A tank's shape that its own measures contradict, told at the field to mend. */
function inShape(tank: SpecOf['tank'], context: z.RefinementCtx): void {
  const { shape, ...measures } = tank
  const fault = planFault({ ...measures, ...(shape ? { form: shape } : {}) })
  if (!fault) return
  const { field, says } = PLAN_FAULTS[fault.code]
  context.addIssue({ code: 'custom', path: [field], message: says('mostMm' in fault ? fault.mostMm : 0) })
}

/** The table and the contract type are compared in spec-fields.ts: that is what makes this assertion true. */
const specSchema = <K extends Kind>(kind: K) =>
  strict('Spec', fieldShape(SPEC_FIELDS[kind], kindWords(kind))) as unknown as z.ZodType<SpecOf[K], SpecOf[K]>

const SpecSchemas = Object.fromEntries(KINDS.map((kind) => [kind, specSchema(kind)])) as {
  [K in Kind]: z.ZodType<SpecOf[K], SpecOf[K]>
}

/** A point of a pump's curve lies between its ends. A half of one is kept: the other half may come later. */
function onItsCurve(spec: FilterSpec, context: z.RefinementCtx): void {
  const under = (low: 'midHeadM' | 'midFlowLph', high: 'maxHeadM' | 'ratedFlowLph', words: string, unit: string) => {
    const [a, b] = [spec[low], spec[high]]
    if (a !== undefined && b !== undefined && a >= b)
      context.addIssue({ code: 'custom', path: [low], message: `${words}: ${a} and ${b} ${unit}. Enter less, or leave it empty.` })
  }
  under('midHeadM', 'maxHeadM', 'Head at a point of its curve is not below the highest head', 'm')
  under('midFlowLph', 'ratedFlowLph', 'Flow at that point is not below the rated flow', 'L/h')
}

/** A sump that runs fuller than full is a slip of the pen. */
function belowItsRim({ operatingVolumeL: running, totalVolumeL: total }: SumpSpec, context: z.RefinementCtx): void {
  if (running !== undefined && total !== undefined && running > total)
    context.addIssue({
      code: 'custom',
      path: ['operatingVolumeL'],
      message: `Water while the pump runs is more than the volume to the rim: ${running} and ${total} L. Swap them, or correct one.`,
    })
}

/** One strict validator a kind. A field that nobody entered is left out; null is refused. */
export const SpecSchema: typeof SpecSchemas = {
  ...SpecSchemas,
  tank: SpecSchemas.tank.superRefine(inShape),
  filter: SpecSchemas.filter.superRefine(onItsCurve),
  sump: SpecSchemas.sump.superRefine(belowItsRim),
}

const gtin = z
  .string({ error: 'GTIN is text: it may begin with 0.' })
  .overwrite(bareGtin)
  .refine(isGtin, {
    error: (issue) =>
      `GTIN "${String(issue.input).slice(0, 20)}" is not right: it has 8, 12, 13 or 14 digits and the last one checks the others. Read it off the barcode again.`,
  })
  .nullable()
  .default(null)

export const KitPartSchema = strict('Part', { productId: rowId('Part'), quantity: count('Quantity of a part', 1, 99) })

const parts = list('Parts', KitPartSchema, 0, 40).default([])
const noParts = list('Parts', KitPartSchema, 0, 40)
  .refine((entries) => entries.length === 0, { error: 'Only a kit has parts. Leave them out, or choose the kind kit.' })
  .default([])

const productSchema = <K extends Kind>(kind: K) =>
  strict('Product', {
    kind: z.literal(kind),
    name: text('Name', 1, NAME_LENGTH),
    maker: optionalText('Maker', NAME_LENGTH),
    gtin,
    oversize: yesNo('Oversize').default(false),
    note: optionalText('Note', NOTE_LENGTH),
    warrantyMonths,
    spec: SpecSchema[kind],
    parts: kind === 'kit' ? parts : noParts,
    archived: yesNo('Archived').default(false),
  })

/** All of a product but what the server gives it. What a kit may contain is `checkKit`'s to say: it needs the catalog. */
export const ProductInput = z.discriminatedUnion(
  'kind',
  [
    productSchema('tank'), productSchema('kit'), productSchema('stand'), productSchema('mat'), productSchema('lid'), productSchema('filter'), productSchema('heater'),
    productSchema('light'), productSchema('substrate'), productSchema('conditioner'), productSchema('ammonia_source'), productSchema('test_kit'),
    productSchema('thermometer'), productSchema('power'), productSchema('filter_media'), productSchema('chiller'), productSchema('air_pump'),
    productSchema('circulation_pump'), productSchema('skimmer'), productSchema('co2'), productSchema('uv'), productSchema('hardscape'), productSchema('background'),
    productSchema('bacteria'), productSchema('salt_mix'), productSchema('ro_unit'), productSchema('refractometer'), productSchema('timer'),
    productSchema('battery_backup'), productSchema('sump'), productSchema('plumbing'), productSchema('tool'), productSchema('food'), productSchema('plant'), productSchema('livestock'),
    productSchema('service'),
  ], // prettier-ignore
  { error: `Kind is one of: ${KINDS.join(', ')}.` },
) satisfies z.ZodType<NewProduct>
export type ProductInput = z.output<typeof ProductInput>
/** A product before it is stored. */
export type NewProduct = WithoutRow<Product>
type WithoutRow<P> = P extends Product ? Omit<P, 'id' | 'version'> : never

const fee = (label: string) => minor(label, 0)
export const DeliveryRuleSchema = z.discriminatedUnion(
  'kind',
  [
    strict('Delivery', { kind: z.literal('pickup_only') }),
    strict('Delivery', { kind: z.literal('flat'), feeMinor: fee('Delivery fee'), oversizeMinor: fee('Oversize surcharge') }),
    strict('Delivery', {
      kind: z.literal('free_over'),
      feeMinor: fee('Delivery fee'),
      freeOverMinor: minor('Amount from which delivery is free', 1),
      oversizeMinor: fee('Oversize surcharge'),
    }),
  ],
  { error: 'Delivery is one of: pickup_only, flat, free_over.' },
)

/** A delivery that is free from less than it costs below that amount is a slip: one more bottle would pay for itself. */
function thresholdInOrder(delivery: DeliveryRule, context: z.RefinementCtx): void {
  if (delivery.kind !== 'free_over' || delivery.freeOverMinor >= delivery.feeMinor) return
  context.addIssue({
    code: 'custom',
    path: ['delivery', 'freeOverMinor'],
    message: 'Delivery is free from less than it costs below that amount. Check both figures, or make the fee 0.',
  })
}

/** Whether a rate is as fine as amounts are worked out with; the slack is what a decimal fraction loses as a double. */
const isRate = (basisPoints: number): boolean => Math.abs(basisPoints * RATE_STEPS - rateSteps(basisPoints)) < 1e-6

function isTimeZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== ''
  } catch {
    return false
  }
}
/** An IANA zone that the runtime knows. */
export const timeZone = text('Time zone', 1, 64).refine(isTimeZone, {
  error: 'Time zone is not known. Write it like Europe/Berlin or America/New_York.',
})
/** ISO 3166-1 alpha-2, shape only. */
export const country = text('Country', 1, 10)
  .regex(/^[A-Z]{2}$/, { error: 'Country is two capital letters, like US or DE.', abort: true })
  .refine((code) => countryName(code) !== null, { error: NO_COUNTRY_WORDS })

const taxRate = (label: string) =>
  z
    .number({ error: `${label} is a number of hundredths of a per cent: 600 for 6 %, 887.5 for 8.875 %.` })
    .refine(isRate, { error: `${label} has at most 4 decimals as a per cent, 2 in hundredths of it: 887.5 for 8.875 %.` })
    .min(0, { error: `${label} is not below 0.` })
    .max(MOST_TAX_BASIS_POINTS, {
      error: `${label} is at most ${MOST_TAX_BASIS_POINTS} (30 %). It is in hundredths of a per cent: 600 for 6 %.`,
    })

/** Rates that a store takes beside its usual one: no country has more than a handful, and a customer reads each on the receipt. */
const MOST_RATES = 8
export const StoreRateSchema = strict('Rate', {
  name: text('Name of a rate', 1, 40),
  basisPoints: taxRate('Rate'),
  kinds: list('Kinds', KindSchema, 0, KINDS.length).default([]),
  productIds: list('Products', rowId('Product'), 0, 500).default([]),
})

function ratesInOrder(store: Pick<Store, 'taxName' | 'otherRates' | 'deliveryRate'>, context: z.RefinementCtx): void {
  const fault = (path: Array<string | number>, message: string) => context.addIssue({ code: 'custom', path, message })
  const rates = store.otherRates ?? []
  const names = [store.taxName ?? '', ...rates.map(({ name }) => name)].map((name) => name.toLowerCase())
  rates.forEach(({ name, kinds, productIds }, at) => {
    if (names.indexOf(name.toLowerCase()) !== at + 1)
      fault(['otherRates', at, 'name'], `There are two rates called "${name}". Give each its own name.`)
    if (kinds.length === 0 && productIds.length === 0)
      fault(['otherRates', at, 'kinds'], `No goods take the rate "${name}". Choose a kind or a product, or take the rate out.`)
    const twice = kinds.find((kind) => rates.findIndex((rate) => rate.kinds.includes(kind)) !== at)
    if (twice) fault(['otherRates', at, 'kinds'], `The kind "${twice}" takes two rates. Leave it at one of them.`)
  })
  if (store.deliveryRate != null && !rates.some(({ name }) => name === store.deliveryRate))
    fault(['deliveryRate'], `There is no rate called "${store.deliveryRate}". Choose one of this store's rates for delivery.`)
}

/** Codes that the runtime knows: a slip like UDS would else name every amount. */
const CURRENCIES: ReadonlySet<string> = new Set(Intl.supportedValuesOf('currency'))
/** An ISO 4217 code. */
export const currencyCode = text('Currency', 1, 10)
  .regex(/^[A-Z]{3}$/, { error: 'Currency is three capital letters of ISO 4217, like USD or EUR.', abort: true })
  .refine((code) => CURRENCIES.has(code), {
    error: 'There is no such currency. Write its code of ISO 4217, like USD or EUR.',
  })

export const StoreInput = strict('Store', {
  name: text('Name', 1, NAME_LENGTH),
  kind: oneOf('Kind of store', ['local', 'online']),
  town: optionalText('Town', NAME_LENGTH),
  country,
  subdivision: optionalText('State or province', 60),
  timeZone,
  taxBasisPoints: taxRate('Tax'),
  taxName: text('Name of the usual rate', 1, 40).nullable().optional(),
  otherRates: list('Rates', StoreRateSchema, 0, MOST_RATES).optional(),
  pricesIncludeTax: yesNo('Prices include tax'),
  deliveryTaxed: yesNo('Delivery is taxed'),
  deliveryRate: text('Rate of delivery', 1, 40).nullable().optional(),
  delivery: DeliveryRuleSchema,
  returnDays: count('Return days', 0, 3650).nullable().default(null),
  warrantyMonths,
  currency: currencyCode.nullable().optional(),
  own: yesNo('Own store').optional(),
  note: optionalText('Note', NOTE_LENGTH),
  archived: yesNo('Archived').default(false),
}).superRefine((store, context) => {
  thresholdInOrder(store.delivery, context)
  ratesInOrder(store, context)
}) satisfies z.ZodType<Omit<Store, 'id' | 'version'>>
export type StoreInput = z.output<typeof StoreInput>

/** A set of stores. */
export const RegionInput = strict('Region', {
  name: text('Name of a region', 1, 80),
  storeIds: list('Stores', rowId('Store'), 1, 500),
})
export type RegionInput = z.output<typeof RegionInput>
