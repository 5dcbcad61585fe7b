import * as z from 'zod'
import { CORD_FIELD } from '../catalog/cord-field.ts'
import { SpecSchema } from '../catalog/schema.ts'
import { choice, number } from '../fields.ts'
import type { NeedExact } from '../quote/need.ts'
import { count, fieldShape, list, oneOf, strict, text, yesNo } from '../schema.ts'
import { CONDITION_FIELDS } from './condition-fields.ts'
import type { ConditionField, Conditions, LivestockGroup, OnlyStated } from './conditions.ts'
import { APPLIANCE_KINDS, type Appliance, type ApplianceSpec, type Counted, type Gear } from './gear.ts'

/** The table and NeedExact are compared in condition-fields.ts: that is what makes this assertion true. */
const shape = fieldShape(CONDITION_FIELDS, 'a room and its water') as unknown as {
  [Key in keyof NeedExact]-?: z.ZodOptional<z.ZodType<NonNullable<NeedExact[Key]>, NonNullable<NeedExact[Key]>>>
}

/** Two figures in the wrong order are told at the second one's field. */
function inOrder(room: NeedExact, context: z.RefinementCtx): void {
  const pair = (low: keyof NeedExact, high: keyof NeedExact, words: string) => {
    const [a, b] = [room[low], room[high]]
    if (typeof a === 'number' && typeof b === 'number' && a > b)
      context.addIssue({ code: 'custom', path: [high], message: `${words}: ${a} °C and ${b} °C. Swap them, or correct one.` })
  }
  pair('coldestRoomC', 'warmestRoomC', 'The coldest room is warmer than the warmest')
  pair('lowestC', 'targetC', 'The lowest safe temperature is above the target')
  const { targetC, dangerC } = room
  if (typeof targetC === 'number' && typeof dangerC === 'number' && targetC >= dangerC)
    context.addIssue({
      code: 'custom',
      path: ['dangerC'],
      message: `The danger mark must be above the target temperature: ${dangerC} °C and ${targetC} °C. Swap them, or correct one.`,
    })
}

/** What someone stated of room, outlet and water; the rest is resolved by `resolveConditions` and marked assumed. */
export const NeedExactSchema = strict('More exact', shape).superRefine(inOrder) satisfies z.ZodType<NeedExact>

/** Something physical, how many, and its spec. */
const counted = <S>(spec: z.ZodType<S, S>): z.ZodType<Counted<S>, Counted<S>> =>
  strict('Item', {
    name: text('Name', 0, 200),
    quantity: count('Quantity', 1, 999),
    spec,
    owned: yesNo('Owned').optional(),
  })

/** The fields that the checks read, with the limits of the widest kind. */
const APPLIANCE_SPEC_FIELDS = [
  number('powerW', 'Power', 'W', 0.5, 3000),
  number('coolingW', 'Cooling power', 'W', 5, 10_000),
  number('ratedFlowLph', 'Rated flow', 'L/h', 50, 50_000),
  number('ratedVolumeL', 'Tank size on the box', 'L', 5, 20_000),
  choice('place', 'Place', { hang_on: 'Hangs on the rim', in_tank: 'In the tank', in_sump: 'In a sump' }),
  CORD_FIELD,
] as const

/** More of one kind than any build has. */
const MOST_ITEMS = 40
const several = <S>(label: string, spec: z.ZodType<S, S>) => list(label, counted(spec), 0, MOST_ITEMS).default([])
const one = <S>(spec: z.ZodType<S, S>) => counted(spec).nullable().default(null)

/** Any plugged-in kind: what the checks read of it. */
const ApplianceSchema = strict('Appliance', {
  kind: oneOf('Kind of appliance', APPLIANCE_KINDS),
  name: text('Name', 0, 200),
  quantity: count('Quantity', 1, 999),
  spec: strict('Spec', fieldShape(APPLIANCE_SPEC_FIELDS, 'an appliance')) as unknown as z.ZodType<ApplianceSpec, ApplianceSpec>,
  owned: yesNo('Owned').optional(),
}) satisfies z.ZodType<Appliance>

export const GearSchema = strict('Gear', {
  tank: one(SpecSchema.tank),
  stand: one(SpecSchema.stand),
  mat: one(SpecSchema.mat),
  lid: one(SpecSchema.lid),
  filters: several('Filters', SpecSchema.filter),
  heaters: several('Heaters', SpecSchema.heater),
  lights: several('Lights', SpecSchema.light),
  substrates: several('Substrates', SpecSchema.substrate),
  conditioners: several('Conditioners', SpecSchema.conditioner),
  testKits: several('Test kits', SpecSchema.test_kit),
  power: several('Power strips', SpecSchema.power),
  ammoniaSources: list('Ammonia sources', counted(SpecSchema.ammonia_source), 0, MOST_ITEMS).optional(),
  thermometers: list('Thermometers', counted(SpecSchema.thermometer), 0, MOST_ITEMS).optional(),
  appliances: list('Appliances', ApplianceSchema, 0, MOST_ITEMS).optional(),
  sump: counted(SpecSchema.sump).optional(),
  purifiers: list('Reverse-osmosis units', counted(SpecSchema.ro_unit), 0, MOST_ITEMS).optional(),
  salts: list('Salt mixes', counted(SpecSchema.salt_mix), 0, MOST_ITEMS).optional(),
  animals: list('Animals', counted(SpecSchema.livestock), 0, MOST_ITEMS).optional(),
  notNeeded: z.record(z.string().max(40), text('Reason', 0, 500), { error: 'Not needed is an object: slot to reason.' }).default({}),
}) satisfies z.ZodType<Gear>

/** More different filters, heaters or lights than any tank has. Each is tried at the ends of what it leaves open, at the cost of all of its kind. */
const MOST_TRIED = 12
function fewEnough(gear: Gear, context: z.RefinementCtx): void {
  for (const [field, label] of [
    ['filters', 'Filters'],
    ['heaters', 'Heaters'],
    ['lights', 'Lights'],
  ] as const) {
    const { length } = gear[field]
    const message = `${label}: ${length} of them. At most ${MOST_TRIED}: write those that are alike as one with its quantity.`
    if (length > MOST_TRIED) context.addIssue({ code: 'custom', path: [field], message })
  }
}

/** Body of the sizing request: a build, what is known of the room, and what will live in it. Whether the group exists, and whether its marks allow the temperatures, is the server's to say. */
export const SizingBody = strict('Sizing request', {
  gear: GearSchema.superRefine(fewEnough),
  conditions: NeedExactSchema.default({}),
  livestockId: text('Livestock group', 1, 60),
})
export type SizingBody = z.output<typeof SizingBody>

const figure = (label: string) => z.number({ error: `${label} is a number.` })
export const LivestockGroupSchema = strict('Livestock group', {
  id: text('Id', 1, 60),
  name: text('Name', 1, 120),
  examples: text('Examples', 0, 500),
  lowestC: figure('Lowest temperature'),
  targetC: figure('Target temperature'),
  highestC: figure('Highest temperature'),
  dangerC: figure('Danger mark'),
  flowCeilingPerHour: figure('Flow ceiling').nullable(),
  flowFloorPerHour: figure('Flow floor'),
  smallestVolumeL: figure('Smallest volume'),
  feedGramsPerDay: figure('Feed a day'),
  lidNeeded: yesNo('Lid needed'),
  water: oneOf('Water', ['fresh', 'salt']),
  source: text('Source', 0, 500),
  standing: oneOf('Standing', ['edited', 'own']).optional(),
}) satisfies z.ZodType<LivestockGroup>

type ConditionFigures = Omit<Conditions, 'assumed' | 'livestock' | keyof OnlyStated>
const { targetC: _target, lowestC: _lowest, dangerC: _danger, tapPh: _ph, tapGhDegrees: _gh, tapKhDegrees: _kh, ...allOfRoom } = shape
const { joistSpanMm, joistSpacingMm, joistLie, floorUse, waterChangePercent, tapC, altitudeM, siphonBelowMm, pipeVolumeL, ...roomShape } =
  allOfRoom
const isRoomField = (key: string): key is ConditionField => key in roomShape

/** Conditions as resolved, every figure present: what an issued revision carries. */
export const ConditionsSchema = strict('Conditions', {
  ...(Object.fromEntries(Object.entries(roomShape).map(([key, schema]) => [key, schema.nonoptional()])) as unknown as {
    [Key in keyof ConditionFigures]: z.ZodType<ConditionFigures[Key], ConditionFigures[Key]>
  }),
  joistSpanMm,
  joistSpacingMm,
  joistLie,
  floorUse,
  waterChangePercent,
  tapC,
  altitudeM,
  siphonBelowMm,
  pipeVolumeL,
  livestock: LivestockGroupSchema,
  assumed: z.array(
    z.string().refine(isRoomField, { error: 'Assumed names fields of the conditions.' }) as unknown as z.ZodType<
      ConditionField,
      ConditionField
    >,
  ),
}) satisfies z.ZodType<Conditions>
