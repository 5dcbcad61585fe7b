import { COMMON_OUTSIDES } from '../catalog/common-outsides.ts'
import type { TankSpec } from '../catalog/spec.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { SALINITY } from '../water/sea-salinity.ts'
import { seaWaterDensity } from '../water/density.ts'
import type { Finding } from './finding.ts'
import { glassPlate, thicknessFor, type TopEdge } from './glass-plate.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { panelsOf } from './plan-outline.ts'
import { settled } from './settled.ts'
import type { Corner, Situation } from './situation.ts'
import { tankOutline } from './tank-plan.ts'
import { judgeAtLeast } from './verdict.ts'

/** Bending strength that the trade reckons with, Pa, and the factor it keeps below it. Common practice. */
export const TRADE_STRENGTH_PA = 19.2e6
export const TRADE_FACTOR = 3.8
/** What annealed float glass bears for fifty years, Pa: EN 16612:2019, 45 N/mm² × 0.29 ÷ 1.8, from memory. */
export const LASTING_STRENGTH_PA = 7.25e6
/** The trade's strength over the lasting one is 2.65, told to a digit on the safe side: below it the pane is beyond the standard. */
export const LEAST_FACTOR = 2.7
/** Makers of one common size differ by a centimetre; twice that is another size. Own. */
const SAME_SIZE_MM = 20
/** A pane that bows by more than half its thickness bends no longer as a thin plate. */
const PLATE_BOW = 0.5

/** A size that the trade builds every day: its panes are not ours to doubt. @example isCommonSize({ lengthMm: 902, widthMm: 450, heightMm: 450 }) // true */
export const isCommonSize = (tank: Pick<TankSpec, 'lengthMm' | 'widthMm' | 'heightMm' | 'shape'>): boolean =>
  (tank.shape ?? 'rectangular') === 'rectangular' &&
  COMMON_OUTSIDES.some((sides) =>
    [tank.lengthMm, tank.widthMm, tank.heightMm].every((mm, index) => Math.abs((sides[index] ?? NaN) - mm) <= SAME_SIZE_MM),
  )

/**
 * Whether the front pane of a second-hand or unusual tank is thick enough, filled to the rim. A warning only: null for a new tank of a common size, whose
 * maker answers for it. No verdict without a thickness, nor on acrylic, which goes on giving way for years. Of flat panes the longest is judged. A curved
 * pane carries water as a shell does, by how its edges are held: where the flat panes beside it would do, or there are none, it stays *not known*.
 *
 * Value: how many times the trade's bending strength of 19.2 N/mm² covers the pane's stress. Limit: 2.7, the lasting strength by EN 16612; *fits* from the
 * trade's factor of 3.8. Without a stated style both top edges are judged.
 */
export function glassPane(situation: Situation): Finding | null {
  const { tank, gear } = situation
  const owned = gear.tank?.owned === true
  if (!owned && isCommonSize(tank)) return null
  const why = owned ? phrase`The tank is second-hand.` : phrase`The tank is no size that is built every day.`
  if (tank.material === 'acrylic')
    return withoutVerdict(phrase`${why} Acrylic goes on giving way under load for years.`, ASK_MAKER, 'word of the maker')
  if (tank.material === undefined)
    return withoutVerdict(phrase`${why} Nobody has stated what it is made of.`, SAY_MATERIAL, 'tank material')
  if (tank.glassMm === undefined)
    return withoutVerdict(phrase`${why} How thick its glass is has not been stated.`, MEASURE, 'glass thickness')
  const flatMm = longestFlatMm(situation.corners)
  const flat = flatMm > 0 ? judged(situation, tank.glassMm, flatMm, why) : null
  const curved = situation.corners.some(({ shape }) => panelsOf(tankOutline(shape, 0)).some((panel) => panel.curved))
  if (!curved || flat?.verdict === 'does_not_fit') return flat
  return withoutVerdict(
    phrase`${why} Its curved glass carries the water as a shell: no formula of flat panes says how much.`,
    ASK_BUILDER,
    'word of the maker',
  )
}

/** The longest flat pane of the tanks that the stated figures allow, outside, mm; 0 where every pane is curved. @example longestFlatMm(corners) // 1219.2 */
export const longestFlatMm = (corners: readonly Corner[]): number =>
  Math.max(0, ...corners.flatMap(({ shape }) => panelsOf(tankOutline(shape, 0)).map((panel) => (panel.curved ? 0 : panel.lengthMm))))

const ASK_BUILDER = phrase`Ask its maker or a tank builder, and leave a second-hand one empty until they have answered.`

const ASK_MAKER = phrase`Ask its maker, and look for bowed or crazed panels before water goes in.`
const SAY_MATERIAL = phrase`Enter whether the tank is glass or acrylic.`
const MEASURE = phrase`Measure the glass at its upper edge and enter the thickness.`

const withoutVerdict = (reason: Phrase, action: Phrase, missing: string): Finding =>
  makeFinding('glass_pane', {
    verdict: 'not_known',
    reason,
    action: { text: action },
    missing: [missing],
    caution: 'glass',
  })

/** Glass is bought in millimetres everywhere. */
const mm = (thickness: number): string => `${Number.isInteger(thickness) ? thickness : thickness.toFixed(1)} mm`

function judged(
  { tank, corners, conditions, tankUnstated, fillDefaults }: Situation,
  glassMm: number,
  flatMm: number,
  why: Phrase,
): Finding {
  const { livestock } = conditions
  const depthMm = Math.max(...corners.map(({ geometry }) => geometry.insideHeightMm))
  const pane = {
    lengthM: flatMm / 1000,
    depthM: depthMm / 1000,
    waterDensity: seaWaterDensity(SALINITY[livestock.water], livestock.targetC),
  }
  const factorAt = (topEdge: TopEdge): number =>
    quantity(TRADE_STRENGTH_PA / glassPlate({ ...pane, thicknessM: glassMm / 1000, topEdge }).stressPa, 'share', 1).value
  const [worstEdge, bestEdge] = edgesOf(tank.style)
  const verdictAt = (edge: TopEdge) => judgeAtLeast(factorAt(edge), LEAST_FACTOR, TRADE_FACTOR - LEAST_FACTOR)
  const outcome = settled(
    verdictAt(worstEdge),
    verdictAt(bestEdge),
    tank.style === undefined ? ['whether a rim or braces hold the top'] : [],
    namesOf(tankUnstated, fillDefaults),
  )
  const wantedMm = Math.ceil(thicknessFor({ ...pane, topEdge: worstEdge }, TRADE_STRENGTH_PA / TRADE_FACTOR) * 1000)
  const { bowM } = glassPlate({ ...pane, thicknessM: glassMm / 1000, topEdge: worstEdge })
  return makeFinding('glass_pane', {
    ...outcome,
    value: quantity(factorAt(worstEdge), 'share', 1),
    limit: { kind: 'at_least', low: quantity(LEAST_FACTOR, 'share', 1) },
    reason: reasonOf(why, {
      glassMm,
      depthMm,
      lengthMm: flatMm,
      which: (tank.shape ?? 'rectangular') === 'rectangular' ? 'a front pane' : 'its longest flat pane,',
      wantedMm,
      edge: worstEdge,
      bends: bowM * 1000 > PLATE_BOW * glassMm,
    }),
    action: outcome.verdict === 'fits' ? null : { text: actionOf(outcome.verdict, wantedMm) },
    caution: 'glass',
  })
}

/** How the upper edge may be held, worst first. @example edgesOf('rimless') // ['free', 'free'] */
export const edgesOf = (style: TankSpec['style']): [worst: TopEdge, best: TopEdge] => {
  const best = style === 'rimless' ? 'free' : 'held'
  return [style === undefined ? 'free' : best, best]
}

function reasonOf(
  why: Phrase,
  pane: { glassMm: number; depthMm: number; lengthMm: number; which: string; wantedMm: number; edge: TopEdge; bends: boolean },
): Phrase {
  const top = pane.edge === 'free' ? 'with nothing to hold its upper edge' : 'held by its rim or braces'
  const bow = pane.bends ? phrase` It would bow by more than half its thickness.` : phrase``
  return phrase`${why} Filled to the rim, ${quantity(pane.depthMm, 'mm', 0)} of water press on ${pane.which} ${quantity(pane.lengthMm, 'mm', 0)} long, ${top}: it is ${mm(pane.glassMm)}, and the trade would take ${mm(pane.wantedMm)}.${bow}`
}

const actionOf = (verdict: Finding['verdict'], wantedMm: number): Phrase =>
  verdict === 'does_not_fit'
    ? phrase`Do not fill it. Ask its maker or a tank builder; glass of ${mm(wantedMm)} or more is usual.`
    : verdict === 'not_known'
      ? phrase`Enter the tank's style, and ask its maker or a tank builder before it is filled.`
      : phrase`Ask its maker or a tank builder before it is filled.`
