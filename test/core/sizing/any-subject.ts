import fc from 'fast-check'
import type { Kind } from '../../../core/catalog/kinds.ts'
import type { SpecOf } from '../../../core/catalog/spec.ts'
import { LIVESTOCK_GROUPS } from '../../../core/catalog/livestock.ts'
import { SpecSchema } from '../../../core/catalog/schema.ts'
import { SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'
import type { Field } from '../../../core/fields.ts'
import { CONDITION_FIELDS } from '../../../core/sizing/condition-fields.ts'
import type { ConditionField, Conditions, LivestockGroup, OnlyStated } from '../../../core/sizing/conditions.ts'
import type { Counted, Gear } from '../../../core/sizing/gear.ts'

/** Builds and rooms drawn from the very tables that the validators read: whatever they accept, odd as it may be, can come up. */
function valueOf(field: Field): fc.Arbitrary<unknown> {
  switch (field.type) {
    case 'number':
      return fc.oneof(fc.double({ min: field.min, max: field.max, noNaN: true }), fc.constantFrom(field.min, field.max))
    case 'whole':
      return fc.integer({ min: field.min, max: field.max })
    case 'choice':
      return fc.constantFrom(...field.options.map(({ value }) => value))
    case 'flag':
      return fc.boolean()
  }
}
const objectOf = (fields: readonly Field[], allRequired: boolean): fc.Arbitrary<Record<string, unknown>> =>
  fc.record(Object.fromEntries(fields.map((field) => [field.key, valueOf(field)])), {
    requiredKeys: fields.filter(({ required }) => required || allRequired).map(({ key }) => key),
  })

const counted = <K extends Kind>(kind: K): fc.Arbitrary<Counted<SpecOf[K]>> =>
  fc.record({
    name: fc.constantFrom('Torvane', 'Pellick', ''),
    quantity: fc.oneof(fc.integer({ min: 1, max: 4 }), fc.constant(999)),
    // The table and the spec's type are compared where the table is written.
    spec: (objectOf(SPEC_FIELDS[kind], false) as unknown as fc.Arbitrary<SpecOf[K]>).filter(
      (spec) => SpecSchema[kind].safeParse(spec).success,
    ),
  })
const several = <K extends Kind>(kind: K) => fc.array(counted(kind), { maxLength: 3 })
const perhaps = <K extends Kind>(kind: K) => fc.option(counted(kind), { nil: null, freq: 8 })

export const anyGear: fc.Arbitrary<Gear> = fc.record({
  tank: perhaps('tank'),
  stand: perhaps('stand'),
  mat: perhaps('mat'),
  lid: perhaps('lid'),
  filters: several('filter'),
  heaters: several('heater'),
  lights: several('light'),
  substrates: several('substrate'),
  conditioners: several('conditioner'),
  testKits: several('test_kit'),
  power: several('power'),
  animals: several('livestock'),
  sump: fc.option(counted('sump'), { nil: undefined }),
  notNeeded: fc.constantFrom({}, { substrate: 'bare bottom', carry_tank: 'a sideboard', light: 'by a window' }),
})

/** Fields of a need that are no figures of the room: they override the group or are for the startup. */
const NOT_ROOM = new Set(['targetC', 'lowestC', 'dangerC', 'tapPh', 'tapGhDegrees', 'tapKhDegrees'])
const JOISTS = new Set([
  'joistSpanMm',
  'joistSpacingMm',
  'joistLie',
  'floorUse',
  'waterChangePercent',
  'tapC',
  'altitudeM',
  'siphonBelowMm',
  'pipeVolumeL',
])
const ROOM_FIELDS = CONDITION_FIELDS.filter(({ key }) => !NOT_ROOM.has(key) && !JOISTS.has(key))
/** No default stands for them: any of them may be missing. */
const JOIST_FIELDS = CONDITION_FIELDS.filter(({ key }) => JOISTS.has(key))

const celsius = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** A group as the table has it, or with the marks that an advisor wrote over it, in the order the validator asks for. */
const anyGroup: fc.Arbitrary<LivestockGroup> = fc
  .tuple(fc.constantFrom(...LIVESTOCK_GROUPS), fc.option(fc.tuple(celsius(0, 35), celsius(5, 35), celsius(15, 45)), { nil: null }))
  .map(([group, marks]) => {
    const [lowestC, targetC, dangerC] = [...(marks ?? [group.lowestC, group.targetC, group.dangerC])].sort((a, b) => a - b)
    return { ...group, lowestC: lowestC ?? NaN, targetC: targetC ?? NaN, dangerC: dangerC ?? NaN }
  })

export const anyRoom: fc.Arbitrary<Conditions> = fc
  .tuple(
    objectOf(ROOM_FIELDS, true) as unknown as fc.Arbitrary<Omit<Conditions, 'livestock' | 'assumed' | keyof OnlyStated>>,
    anyGroup,
    fc.subarray(ROOM_FIELDS.map(({ key }) => key as ConditionField)),
    objectOf(JOIST_FIELDS, false) as unknown as fc.Arbitrary<OnlyStated>,
  )
  .map(([room, livestock, assumed, joists]) => ({ ...room, ...joists, livestock, assumed }))
