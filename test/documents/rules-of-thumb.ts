import { COMMON_SIZES, type CommonSize } from '../../core/catalog/common-sizes.ts'
import { livestockGroup } from '../../core/catalog/livestock.ts'
import type { Install } from '../../core/install.ts'
import { resolveConditions } from '../../core/quote/conditions.ts'
import { emptyNeed } from '../../core/quote/empty-draft.ts'
import { waterSpan } from '../../core/sizing/filter-flow.ts'
import { lossW } from '../../core/sizing/heat-loss.ts'
import { HEATER_RESERVE } from '../../core/sizing/heater-choice.ts'
import { heatingOf } from '../../core/sizing/heating.ts'
import { lightAtBed } from '../../core/sizing/light-at-bed.ts'
import { PLANT_LIGHT } from '../../core/sizing/light-level.ts'
import { situationOf, type Situation } from '../../core/sizing/situation.ts'
import { over, type Span } from '../../core/sizing/span.ts'
import { FLOW_SHARE } from '../../core/sizing/typical-ranges.ts'
import { L_PER_US_GALLON } from '../../core/units/factors.ts'
import { METRIC } from '../../core/units/say.ts'

/** Rules that the trade says at the counter. Common practice. */
const WATTS_PER_GALLON: Span = { low: 3, high: 5 }
const TURNOVERS: Span = { low: 4, high: 10 }
const LUMENS_PER_LITRE: Span = { low: 10, high: 20 }

const install: Install = {
  name: '', mode: 'club', currency: 'USD', country: 'US', timeZone: 'UTC', units: METRIC, contact: '', paper: 'a4', energyPriceMinor: 17, circuitVoltageV: 120, circuitCurrentA: 15,
} // prettier-ignore

/** Glass by the size, a glass lid, a light as long as the tank, small tropical fish and undemanding plants, a home of 18 to 26 °C. */
function situationFor({ lengthMm, widthMm, heightMm }: CommonSize): Situation {
  const one = <S>(spec: S) => ({ name: '', quantity: 1, spec })
  const conditions = resolveConditions({ ...emptyNeed(), livestockId: 'small-tropical', exact: { plants: 'low' } }, install)
  const found = situationOf({
    gear: {
      tank: one({ lengthMm, widthMm, heightMm, material: 'glass' as const, style: 'rimmed' as const }),
      stand: null, mat: null, lid: one({ cover: 'glass' as const }), filters: [], heaters: [], lights: [one({ lengthMm, luminousFluxLm: 1000 })],
      substrates: [], conditioners: [], testKits: [], power: [], notNeeded: {},
    },
    conditions,
  }) // prettier-ignore
  if (!found.ok) throw new Error(`no tank of ${lengthMm} mm`)
  return found.value
}

interface Row {
  size: CommonSize
  watts: number
  flow: number
  lumens: number
  /** Square metres of wall and surface for each litre of water. */
  skinPerLitre: number
  waterL: number
}

export function rowOf(size: CommonSize): Row {
  const situation = situationFor(size)
  const { conditions, corners } = situation
  const cold = over(heatingOf(situation).cold, ({ loss }) => lossW(loss, conditions.livestock.targetC)).high
  const water = waterSpan(situation)
  const light = lightAtBed(situation)
  const [l, w, h] = [size.lengthMm, size.widthMm, size.heightMm].map((mm) => mm / 1000) as [number, number, number]
  return {
    size,
    watts: Math.ceil((cold * (1 + HEATER_RESERVE)) / 5) * 5,
    flow: Math.ceil((conditions.livestock.flowFloorPerHour * water.high) / FLOW_SHARE.low / 10) * 10,
    lumens: Math.ceil(PLANT_LIGHT.low.low / (light?.perLumenLow ?? NaN) / 50) * 50,
    skinPerLitre: (2 * (l + w) * h + l * w) / water.high,
    waterL: over(corners, ({ geometry }) => geometry.waterVolumeL).high,
  }
}

const gallonsOf = ({ labelVolumeL }: CommonSize): number => labelVolumeL / L_PER_US_GALLON
const within = (value: number, { low, high }: Span): 'less' | 'as' | 'more' => (value < low ? 'less' : value > high ? 'more' : 'as')
const times = (span: Span, by: number): Span => ({ low: Math.round(span.low * by), high: Math.round(span.high * by) })
const WORD = { less: 'less', as: 'agrees', more: 'more' }
const say = ({ low, high }: Span): string => `${low} to ${high}`

function lineOf(row: Row): string {
  const { size, watts, flow, lumens } = row
  const rules = rulesOf(size)
  const cells = [
    size.label,
    `${Math.round(size.labelVolumeL)} L`,
    `${Math.round(row.waterL)} L`,
    `${watts} W`, say(rules.watts), WORD[within(watts, rules.watts)],
    `${flow} L/h`, say(rules.flow), WORD[within(flow, rules.flow)],
    `${lumens} lm`, say(rules.lumens), WORD[within(lumens, rules.lumens)],
  ] // prettier-ignore
  return `| ${cells.join(' | ')} |`
}

export const rulesOf = (size: CommonSize): { watts: Span; flow: Span; lumens: Span } => ({
  watts: times(WATTS_PER_GALLON, gallonsOf(size)),
  flow: times(TURNOVERS, size.labelVolumeL),
  lumens: times(LUMENS_PER_LITRE, size.labelVolumeL),
})

type Figure = 'watts' | 'flow' | 'lumens'
type Part = 'less' | 'more'
const UNIT: Record<Figure, string> = { watts: 'W', flow: 'L/h', lumens: 'lm' }

const tenths = (value: number): string => value.toFixed(1)

/** What makes the difference at one size: a sentence with its own figures beside the rule's. */
const CAUSE: Record<Figure, (row: Row) => string> = {
  watts: ({ skinPerLitre, watts, waterL, size }) =>
    `with ${(skinPerLitre * 10_000).toFixed(0)} cm² of skin for each litre it loses ${tenths(watts / waterL)} W a litre of water, reserve included, where the rule has ${say(perWater(WATTS_PER_GALLON, gallonsOf(size), waterL))}`,
  flow: ({ waterL, size }) =>
    `${Math.round(waterL)} L are in use of ${Math.round(size.labelVolumeL)} L on the label, and half of what is printed arrives`,
  lumens: ({ lumens, size }) => {
    const areaDm2 = (size.lengthMm * size.widthMm) / 10_000
    return `its bed of ${Math.round(areaDm2 * 100)} cm² asks for ${tenths(lumens / areaDm2)} lm a square decimetre under ${Math.round(size.heightMm / 10)} cm of tank, where the rule's litres give it ${say(perWater(LUMENS_PER_LITRE, size.labelVolumeL, areaDm2))}`
  },
}

/** A rule by one measure, told by another. */
const perWater = ({ low, high }: Span, by: number, over: number): Span => ({
  low: Number(tenths((low * by) / over)),
  high: Number(tenths((high * by) / over)),
})

const WHY: Record<Figure, Record<Part, string>> = {
  watts: {
    more: 'More heat than the rule: a small tank has much skin for its water and loses heat through all of it. A rule by volume does not see that.',
    less: 'Less heat than the rule: a large tank has little skin for its water, and this one has a lid and a home that never falls below 18 °C. The rule allows for colder rooms and open tops.',
  },
  flow: {
    more: 'More flow than the rule: half of what is printed goes lost in media and hoses, and the rule counts what is printed.',
    less: 'Less flow than the rule: glass, substrate and the gap under the rim leave less water than the label says.',
  },
  lumens: {
    more: 'More light than the rule: at the dark end the height of the light and tinted water take most of it.',
    less: 'Less light than the rule: light falls on an area and not into a volume, and little of it goes lost in so little water. The rule is older than lamps that throw nearly all of theirs down (from memory).',
  },
}

/** Why the engine and a rule part: once the cause, then a sentence for each size that it holds for. */
function reasonsOf(rows: readonly Row[]): string[] {
  return (['watts', 'flow', 'lumens'] as const).flatMap((figure) =>
    (['more', 'less'] as const).flatMap((part) => {
      const those = rows.filter((row) => within(row[figure], rulesOf(row.size)[figure]) === part)
      if (those.length === 0) return []
      const [head = '', why = ''] = WHY[figure][part].split(/: (.*)/)
      const each = those.map(
        (row) => `- ${row.size.label}, ${row[figure]} ${UNIT[figure]} against ${say(rulesOf(row.size)[figure])}: ${CAUSE[figure](row)}.`,
      )
      return [`### ${head}`, '', `${why.charAt(0).toUpperCase()}${why.slice(1)}`, '', ...each, '']
    }),
  )
}

const HEAD = `# The engine and the rules of thumb

Written by \`npm run generate\` from the engine itself; not to be edited.

Each common size in glass under a glass lid, small tropical fish at their target, undemanding plants, 5 cm of substrate, in a home of 18 to 26 °C.

- **Heat**: what holds the coldest room with a quarter in reserve, at the high end of the losses, against 3 to 5 W for each US gallon of the label.
- **Flow**: what must be printed on the filter so that loaded media still turn the water over often enough, against 4 to 10 times the label an hour.
- **Light**: lumens of white light that bring 15 µmol/m²s to the bed through tinted water, against 10 to 20 lm for each litre of the label.

The rules are common practice. Where they and the engine part, each by itself has its reason below the table. The heat of the smallest tanks is less than any heater
that is sold: the report advises none under 25 W, but a controller. A choice is made by the sizing report of a build, never by this
table: it knows the room, the lid and the animals.

| Size | Label | Water in use | Heat | Rule, W | | Flow | Rule, L/h | | Light | Rule, lm | |
|---|---|---|---|---|---|---|---|---|---|---|---|
`

/** The whole document. */
export function rulesOfThumb(): string {
  if (livestockGroup('small-tropical') === undefined) throw new Error('the group of the document is gone')
  const rows = COMMON_SIZES.map(rowOf)
  const reasons = reasonsOf(rows)
  return `${HEAD}${rows.map(lineOf).join('\n')}\n\n## Why they part\n\n${reasons.join('\n').trimEnd()}\n`
}
