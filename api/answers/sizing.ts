import * as z from 'zod'
import { SLOTS } from '../../core/catalog/kinds.ts'
import type { Action, ToldFinding, Turn } from '../../core/sizing/finding.ts'
import { CHECKS } from '../../core/sizing/finding.ts'
import { CONDITION_FIELDS } from '../../core/sizing/condition-fields.ts'
import type { Conditions } from '../../core/sizing/conditions.ts'
import type { FloorPlan } from '../../core/sizing/floor-plan.ts'
import type { OpenQuestion, ToldReport } from '../../core/sizing/report.ts'
import type { SetupPlan } from '../../core/startup/setup-plan.ts'
import { STEP_GROUPS } from '../../core/startup/setup-plan.ts'
import type { Unit } from '../../core/units/quantity.ts'
import { answer } from './registry.ts'

const UNITS = [
  'mm', 'm', 'm2', 'L', 'mL', 'kg', 'g', 'g/kg', 'degC', 'K', 'W', 'W/K', 'V', 'A', 'L/h', 'per_hour', 'h', 'min', 'days', 'mg/L', 'umol/m2/s', 'mol/m2/day', 'lm', 'kWh/year', 'L/day', 'share', 'percent',
  'count', 'dKH', 'N', 'kg/m2',
] as const satisfies readonly Unit[] // prettier-ignore
const verdict = z.enum(['does_not_fit', 'not_known', 'marginal', 'fits'])

export const QuantityAnswer = answer(
  'Quantity',
  z.strictObject({
    value: z.number(),
    unit: z.enum(UNITS),
    digits: z.int(),
    least: z.literal(true).optional(),
    fine: z.literal(true).optional(),
  }),
)
/** Words and quantities in turn; a reader's units are put in when it is said. */
export const PhraseAnswer = answer('Phrase', z.array(z.union([z.string(), QuantityAnswer])))

const limit = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('at_most'), high: QuantityAnswer }),
  z.strictObject({ kind: z.literal('at_least'), low: QuantityAnswer }),
  z.strictObject({ kind: z.literal('between'), low: QuantityAnswer, high: QuantityAnswer }),
])
const optionalFigures = <const Keys extends readonly string[]>(keys: Keys) =>
  z.strictObject(Object.fromEntries(keys.map((key) => [key, z.number().optional()])) as Record<Keys[number], z.ZodOptional<z.ZodNumber>>)

const action = z.strictObject({
  text: PhraseAnswer,
  want: z
    .strictObject({
      slot: z.enum(SLOTS),
      quantity: z.int(),
      minimum: optionalFigures(['powerW', 'ratedFlowLph', 'ratedLoadKg', 'luminousFluxLm', 'cordMm', 'lengthMm', 'widthMm', 'outlets']),
      maximum: optionalFigures(['powerW']).optional(),
      top: z.literal('full').optional(),
    })
    .optional(),
}) satisfies z.ZodType<Action>

const WORDINGS = ['within the usual allowance', 'ask before you place it', 'do not place it before an engineer has looked'] as const
const ends = z.strictObject({ low: QuantityAnswer, high: QuantityAnswer }).optional()
const turn = z.strictObject({
  input: z.string(),
  at: PhraseAnswer,
  verdict,
  wording: z.enum(WORDINGS).optional(),
}) satisfies z.ZodType<Turn>

const finding = z.strictObject({
  check: z.enum(CHECKS),
  title: z.string(),
  verdict,
  wording: z.enum(WORDINGS).optional(),
  value: QuantityAnswer.optional(),
  limit: limit.optional(),
  margin: QuantityAnswer.optional(),
  reason: PhraseAnswer,
  action: action.nullable(),
  assumed: z.array(z.string()),
  missing: z.array(z.string()),
  source: z.strictObject({ tag: z.enum(['published', 'common_practice', 'from_memory', 'own']), text: z.string() }),
  range: ends,
  limitRange: ends,
  worst: verdict.optional(),
  turns: z.array(turn).optional(),
  caution: z.string().optional(),
  hurtRank: z.number(),
}) satisfies z.ZodType<ToldFinding>

const FIELDS = CONDITION_FIELDS.map(({ key }) => key) as Array<keyof Conditions>
const question = z.strictObject({
  text: z.string(),
  input: z.string(),
  place: z.discriminatedUnion('at', [
    z.strictObject({ at: z.literal('need'), field: z.enum(FIELDS) }),
    z.strictObject({ at: z.literal('slot'), slot: z.enum(SLOTS) }),
  ]),
  checks: z.array(z.enum(CHECKS)),
}) satisfies z.ZodType<OpenQuestion>

const some = z.number().optional()
const range = z.strictObject({ low: z.number(), high: z.number() }).optional()
export const dripLoop = z.strictObject({
  neededMm: z.number(),
  lowPointMm: z.number(),
  exitHeightMm: z.number(),
  outletHeightMm: z.number(),
  distanceMm: z.number(),
  to: z.enum(['strip', 'wall_strip']).optional(),
})
const floorPlan = z.strictObject({
  spanMm: z.number(),
  spacingMm: z.number(),
  lie: z.enum(['bearing_wall', 'across', 'along']),
  lieStated: z.boolean(),
  path: z.enum(['full', 'end_panels', 'feet']),
  pathStated: z.boolean(),
  alongMm: z.number(),
  acrossMm: z.number(),
  centreMm: z.number(),
  answeredCentreMm: some,
  massKg: z.number(),
  loadPercent: z.number(),
  governs: z.enum(['bending', 'shear']),
}) satisfies z.ZodType<FloorPlan>
const energy = z.strictObject({
  items: z.array(
    z.strictObject({ what: z.string(), kwhPerYear: z.number(), lowKwhPerYear: some, highKwhPerYear: some, costMinorPerYear: some }),
  ),
  kwhPerYear: z.number(),
  lowKwhPerYear: some,
  highKwhPerYear: some,
  costMinorPerYear: z.number(),
  lowCostMinorPerYear: some,
  highCostMinorPerYear: some,
})
const waterChange = z.strictObject({ mixedC: z.number(), hours: some })
const heaterAdvice = z.strictObject({ count: z.int(), eachLowestW: z.number(), eachHighestW: z.number(), oneHolds: z.boolean() })
const heatCurve = z.strictObject({
  points: z.array(z.strictObject({ roomC: z.number(), lowW: z.number(), usualW: z.number(), highW: z.number() })),
  targetC: z.number(),
  coldestRoomC: z.number(),
  warmestRoomC: z.number(),
  oneHeaterW: some,
  allHeatersW: some,
})
const lightAlong = z.strictObject({
  points: z.array(z.strictObject({ alongMm: z.number(), lowUmol: z.number(), highUmol: z.number() })),
  endsShare: z.number(),
  frontShare: z.number(),
  dimmedTo: some,
})
const curve = z.array(z.strictObject({ flowLph: z.number(), headM: z.number() }))
const span = z.strictObject({ low: z.number(), high: z.number() })
const pumpCurve = z.strictObject({
  filter: z.string(),
  pump: curve,
  clean: curve,
  loaded: curve,
  cleanAt: curve.element,
  loadedAt: curve.element,
  cleanLph: span,
  loadedLph: span,
  floorLph: z.number(),
  ceilingLph: z.number().nullable(),
})
const figures = z.strictObject({
  outsideVolumeL: some, grossVolumeL: some, waterVolumeL: some, tankWaterL: some, emptyMassKg: some, runningMassKg: some, brimMassKg: some, substrateMassKg: some, coldLossW: some, usualLossW: some,
  heaterPowerW: some, stuckTemperatureC: some, evaporationLPerDay: range, flowLph: some, turnoverPerHour: some, lightAtBedUmol: range, peakLoadW: some,
  dripLoop: dripLoop.optional(), energy: energy.optional(), heatCurve: heatCurve.optional(), lightAlong: lightAlong.optional(), pumpCurve: pumpCurve.optional(),
  stuckHours: some, oneFailedC: some, heatLostHours: some, heaterDutyPercent: some, waterChange: waterChange.optional(), heaterAdvice: heaterAdvice.optional(),
  floorPlan: floorPlan.optional(),
}) // prettier-ignore

export const SizingAnswer = answer(
  'SizingReport',
  z.strictObject({
    findings: z.array(finding),
    counts: z.strictObject({ does_not_fit: z.int(), not_known: z.int(), marginal: z.int(), fits: z.int() }),
    pageOne: z.array(z.int()),
    figures,
    questions: z.array(question).optional(),
  }) satisfies z.ZodType<ToldReport>,
)

export const SetupPlanAnswer = answer(
  'SetupPlan',
  z.strictObject({
    title: PhraseAnswer,
    waterVolumeL: z.number().nullable(),
    steps: z.array(
      z.strictObject({
        id: z.string(),
        group: z.enum(STEP_GROUPS),
        title: z.string(),
        why: PhraseAnswer,
        amounts: z.array(z.strictObject({ label: z.string(), value: PhraseAnswer })),
        actions: z.array(PhraseAnswer),
        howLong: z.string(),
        stopAndAsk: PhraseAnswer,
        done: z.string(),
        earliestDay: z.number().nullable(),
        drawing: z.enum(['drip_loop', 'level']).nullable(),
        caution: z.string().nullable(),
      }),
    ),
    notComputed: z.array(z.string()),
    marks: z
      .strictObject({
        ammoniaMgL: z.number(),
        nitriteMgL: z.number(),
        highestC: z.number().optional(),
        lowestPh: z.number(),
        lowestKhDegrees: z.number(),
        lowestC: z.number(),
        dangerC: z.number(),
        heated: z.boolean(),
      })
      .optional(),
  }) satisfies z.ZodType<SetupPlan>,
)
