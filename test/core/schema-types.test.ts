import { describe, expect, expectTypeOf, it } from 'vitest'
import * as z from 'zod'
import { ProductInput, StoreInput, type DeliveryRuleSchema, type NewProduct, type SpecSchema } from '../../core/catalog/schema.ts'
import type { Kind } from '../../core/catalog/kinds.ts'
import type { SpecOf } from '../../core/catalog/spec.ts'
import type { DeliveryRule, Store } from '../../core/catalog/store.ts'
import type { InstallSettings } from '../../core/install.ts'
import { InstallInput } from '../../core/install/schema.ts'
import { SightingInput, type PostedSighting } from '../../core/pricing/schema.ts'
import type { BuildLine, QuoteDraft } from '../../core/quote/draft.ts'
import type { Need } from '../../core/quote/need.ts'
import type { Reading } from '../../core/quote/quote-view.ts'
import { CustomerInput, QuoteDraftSchema, type BuildLineSchema, type NeedSchema } from '../../core/quote/schema.ts'
import type { Conditions, LivestockGroup } from '../../core/sizing/conditions.ts'
import type { Gear } from '../../core/sizing/gear.ts'
import { ConditionsSchema, SizingBody, type GearSchema, type LivestockGroupSchema } from '../../core/sizing/schema.ts'
import { ReadingInput } from '../../core/startup/schema.ts'

/** Either assigned to the other: a field that exists on one side only, or is wider there, does not compile. */
type Both<A, B> = [A] extends [B]
  ? [B] extends [A]
    ? keyof A extends keyof B
      ? keyof B extends keyof A
        ? true
        : 'a key too few'
      : 'a key too many'
    : 'too wide'
  : 'does not fit'

describe('validators and contract types', () => {
  it('describe the same objects: compiled, not run', () => {
    expectTypeOf<Both<z.output<typeof NeedSchema>, Need>>().toEqualTypeOf<true>()
    expectTypeOf<Both<z.output<typeof BuildLineSchema>, BuildLine>>().toEqualTypeOf<true>()
    expectTypeOf<Both<z.output<typeof QuoteDraftSchema>, QuoteDraft>>().toEqualTypeOf<true>()
    expectTypeOf<Both<Omit<z.output<typeof GearSchema>, 'notNeeded'>, Omit<Gear, 'notNeeded'>>>().toEqualTypeOf<true>()
    expectTypeOf<Both<z.output<typeof ConditionsSchema>, Conditions>>().toEqualTypeOf<true>()
    expectTypeOf<Both<z.output<typeof LivestockGroupSchema>, LivestockGroup>>().toEqualTypeOf<true>()
    expectTypeOf<Both<z.output<typeof SightingInput>, PostedSighting>>().toEqualTypeOf<true>()
    expectTypeOf<Both<z.output<typeof StoreInput>, Omit<Store, 'id' | 'version'>>>().toEqualTypeOf<true>()
    expectTypeOf<Both<z.output<typeof DeliveryRuleSchema>, DeliveryRule>>().toEqualTypeOf<true>()
    expectTypeOf<Both<z.output<typeof InstallInput>, InstallSettings>>().toEqualTypeOf<true>()
    expectTypeOf<Both<z.output<typeof ReadingInput>, Reading>>().toEqualTypeOf<true>()
    expectTypeOf<Both<z.output<typeof ProductInput>, NewProduct>>().toEqualTypeOf<true>()
    expectTypeOf<{ [K in Kind]: z.output<(typeof SpecSchema)[K]> }>().toEqualTypeOf<{ [K in Kind]: SpecOf[K] }>()
  })

  it.each(
    Object.entries({
      ProductInput,
      StoreInput,
      SightingInput,
      QuoteDraftSchema,
      SizingBody,
      ConditionsSchema,
      InstallInput,
      ReadingInput,
      CustomerInput,
    }),
  )('%s can be told as JSON Schema that refuses unknown fields', (_name, schema) => {
    const json = JSON.stringify(z.toJSONSchema(schema, { io: 'input' }))
    expect(json).toContain('"additionalProperties":false')
    expect(json).not.toContain('"not":{}')
  })
})
