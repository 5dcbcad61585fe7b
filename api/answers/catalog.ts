import * as z from 'zod'
import { KINDS } from '../../core/catalog/kinds.ts'
import type { ProductPicture } from '../../core/catalog/picture.ts'
import type { Product } from '../../core/catalog/product.ts'
import { DeliveryRuleSchema, KitPartSchema, SpecSchema, StoreRateSchema } from '../../core/catalog/schema.ts'
import type { Region } from '../../core/catalog/region.ts'
import type { Store } from '../../core/catalog/store.ts'
import { answer } from './registry.ts'

export const id = z.guid()
export const version = z.int().min(1)
export const day = z.string().meta({ format: 'date' })
export const instant = z.string().meta({ format: 'date-time' })
export const amount = z.int()
export const maybeAmount = amount.nullable()

const productOf = (kind: (typeof KINDS)[number]) =>
  z.strictObject({
    id,
    kind: z.literal(kind),
    name: z.string(),
    maker: z.string().nullable(),
    gtin: z.string().nullable(),
    oversize: z.boolean(),
    note: z.string().nullable(),
    warrantyMonths: z.int().nullable().optional(),
    spec: SpecSchema[kind],
    parts: z.array(KitPartSchema),
    archived: z.boolean(),
    version,
  })

const [firstKind, ...otherKinds] = KINDS.map(productOf)
if (firstKind === undefined) throw new Error('there are no kinds')
// One branch a kind, each compared with the contract by the spec's own schema.
export const ProductAnswer = answer('Product', z.discriminatedUnion('kind', [firstKind, ...otherKinds]) as unknown as z.ZodType<Product>)

export const ProductsAnswer = answer(
  'Products',
  z.strictObject({
    items: z.array(ProductAnswer),
    total: z.int(),
    /** Hashes of the pictures of those that have one, by product. */
    pictures: z.record(z.string(), z.string()),
  }),
)

export const PictureAnswer = answer(
  'Picture',
  z.strictObject({
    hash: z.string().nullable(),
    width: z.int().nullable(),
    height: z.int().nullable(),
    version: z.int().min(0),
  }) satisfies z.ZodType<ProductPicture>,
)

export const StoreAnswer = answer(
  'Store',
  z.strictObject({
    id,
    name: z.string(),
    kind: z.enum(['local', 'online']),
    town: z.string().nullable(),
    country: z.string(),
    subdivision: z.string().nullable(),
    timeZone: z.string(),
    taxBasisPoints: z.number(),
    taxName: z.string().nullable().optional(),
    otherRates: z.array(StoreRateSchema).optional(),
    pricesIncludeTax: z.boolean(),
    deliveryTaxed: z.boolean(),
    deliveryRate: z.string().nullable().optional(),
    delivery: DeliveryRuleSchema,
    returnDays: z.int().nullable(),
    warrantyMonths: z.int().nullable().optional(),
    currency: z.string().nullable().optional(),
    own: z.boolean().optional(),
    note: z.string().nullable(),
    archived: z.boolean(),
    version,
  }) satisfies z.ZodType<Store>,
)
export const RegionAnswer = answer(
  'Region',
  z.strictObject({ id, name: z.string(), storeIds: z.array(id), version }) satisfies z.ZodType<Region>,
)
/** Watches that go by a region: how many, never whose. */
export const RegionWatchesAnswer = answer('RegionWatches', z.strictObject({ watches: z.int().min(0) }))
export const RegionsAnswer = answer('Regions', z.strictObject({ items: z.array(RegionAnswer) }))

export const StoresAnswer = answer('Stores', z.strictObject({ items: z.array(StoreAnswer) }))
