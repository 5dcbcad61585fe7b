import { shapeWords, type TankForm } from '../catalog/tank-shape.ts'
import { phrase, quantity, type Phrase, type Quantity } from '../units/quantity.ts'
import type { Finding } from './finding.ts'
import { FREE_FALL } from './glass-plate.ts'
import { LASTING_STRENGTH_PA } from './glass-pane.ts'
import { makeFinding } from './make-finding.ts'
import { overhangStressPa } from './overhang.ts'
import type { Situation } from './situation.ts'
import { PANEL_DENSITY } from './tank-mass.ts'

/** A frame under the edge must lie under the tank's own frame; wider than this on either side it does not. Common practice. */
const FRAME_SLACK_MM = 20
/** Makers round lengths to the millimetre and inches to the half millimetre: less than this is no overhang. Own. */
const ROUNDING_MM = 2

const formOf = (shape: TankForm | undefined): TankForm => shape ?? 'rectangular'

/**
 * Whether the tank stands wholly on the stand's top.
 *
 * Value: the stand's length or depth, whichever is worse, in mm. Limit: at least the tank's; for a frame, which bears only under the edge, also at most
 * 20 mm more. A tank that overhangs by less than the rounding of makers does not. A top that is no rectangle bears a tank of its own shape; an open frame
 * bears no other. Where shape or kind of the top leaves it open it is *not known*.
 *
 * @example standFootprint(situation)?.value // 1220 mm of stand, where a frame is 1219 to 1239 mm for this tank
 */
export function standFootprint(situation: Situation): Finding | null {
  const { gear, tank } = situation
  if (!gear.stand) return null
  const { topLengthMm, topWidthMm } = gear.stand.spec
  const tankSize = phrase`${quantity(tank.lengthMm, 'mm', 0)} by ${quantity(tank.widthMm, 'mm', 0)}`
  if (topLengthMm === undefined || topWidthMm === undefined)
    return notKnown(
      phrase`The top of ${gear.stand.name} is not stated; the tank covers ${tankSize}.`,
      phrase`Measure the stand's top and enter it.`,
      'length and depth of the stand’s top',
    )
  const measured = measuredTop(situation, { topLengthMm, topWidthMm }, tankSize)
  return measured.verdict === 'fits' ? (shapeOnShape(situation) ?? measured) : measured
}

const notKnown = (reason: Phrase, action: Phrase, missing: string): Finding =>
  makeFinding('stand_footprint', {
    verdict: 'not_known',
    reason,
    action: { text: action },
    missing: [missing],
    caution: 'load',
  })

/** What a top of the right size may still get wrong by its shape; null where nothing. */
function shapeOnShape({ gear, tank }: Situation): Finding | null {
  const { shape, top } = gear.stand?.spec ?? {}
  const [under, over] = [formOf(shape), formOf(tank.shape)]
  if (under === over) return null
  if (under !== 'rectangular')
    return notKnown(
      phrase`The stand's top is made for another shape (${shapeWords(under)}): look whether all of the tank's bottom lies on it.`,
      phrase`Choose a stand of the tank's own shape, or a rectangular one with a full board.`,
      'a top of the tank’s own shape',
    )
  if (top === undefined)
    return notKnown(
      phrase`The tank is no rectangle (${shapeWords(over)}): on an open frame its edges would hang free, on a full board not. Which the stand has is not stated.`,
      phrase`Enter the stand's top: full board or frame.`,
      'whether the stand has a full board',
    )
  if (top === 'full') return null
  return makeFinding('stand_footprint', {
    verdict: 'does_not_fit',
    reason: phrase`The stand is an open frame and the tank is no rectangle (${shapeWords(over)}): its edges would hang free.`,
    action: {
      text: phrase`Choose a stand of the tank's own shape, or one with a full board.`,
      want: { slot: 'carry_tank', quantity: 1, minimum: {} },
    },
    caution: 'load',
  })
}

function measuredTop(situation: Situation, size: { topLengthMm: number; topWidthMm: number }, tankSize: Phrase): Finding {
  const { gear, tank } = situation
  const want = {
    slot: 'carry_tank',
    quantity: 1,
    minimum: { lengthMm: Math.ceil(tank.lengthMm - ROUNDING_MM), widthMm: Math.ceil(tank.widthMm - ROUNDING_MM) },
  } as const
  const { topLengthMm, topWidthMm } = size
  const framed = gear.stand?.spec.top === 'perimeter'
  const most = framed ? FRAME_SLACK_MM : Infinity
  const sides = [sideOf(topLengthMm, tank.lengthMm), sideOf(topWidthMm, tank.widthMm)] as const
  const worst = sides.reduce((a, b) => (marginTo(b.reserveMm, most) < marginTo(a.reserveMm, most) ? b : a))
  const overhangs = sides.some(({ reserveMm }) => reserveMm < 0)
  const beside = sides.some(({ reserveMm }) => reserveMm > most)
  const standSize = phrase`${quantity(topLengthMm, 'mm', 0)} by ${quantity(topWidthMm, 'mm', 0)}`
  return makeFinding('stand_footprint', {
    verdict: overhangs || beside ? 'does_not_fit' : 'fits',
    value: worst.stand,
    limit: framed
      ? { kind: 'between', low: worst.least, high: quantity(worst.least.value + FRAME_SLACK_MM, 'mm', 0) }
      : { kind: 'at_least', low: worst.least },
    reason: overhangs
      ? phrase`The tank covers ${tankSize} and the stand's top only ${standSize}: ${overhangWords(situation, sides)}`
      : beside
        ? phrase`The stand is an open frame of ${standSize} and the tank covers ${tankSize}: its edges would not lie on the frame.`
        : phrase`The tank covers ${tankSize} and the stand's top is ${standSize}: every edge is carried.`,
    action:
      overhangs || beside
        ? { text: phrase`Choose a stand whose top is at least ${tankSize}${beside ? ', with a full board' : ''}.`, want }
        : null,
    caution: 'load',
  })
}

interface Side {
  stand: Quantity
  least: Quantity
  reserveMm: number
}

/** One side of the stand, what the tank asks of it, and what it has to spare, all in whole millimetres. */
function sideOf(standMm: number, tankMm: number): Side {
  const [stand, tank] = [quantity(standMm, 'mm', 0), quantity(tankMm, 'mm', 0)]
  const rounding = standMm < tankMm && Math.round(tankMm - standMm) <= ROUNDING_MM
  const least: Quantity = rounding ? stand : tank
  return { stand, least, reserveMm: stand.value - least.value }
}

const marginTo = (reserveMm: number, mostMm: number): number => Math.min(reserveMm, mostMm - reserveMm)

/** How far it sticks out on each side when it stands in the middle, what its bottom wants, and what a flat one is bent by. */
function overhangWords(situation: Situation, [long, deep]: readonly [Side, Side]): Phrase {
  const out = (side: Side) => Math.max(0, -side.reserveMm) / 2
  const ends = out(long) > 0 ? phrase`${quantity(out(long), 'mm', 0)} at either end` : null
  const faces = out(deep) > 0 ? phrase`${quantity(out(deep), 'mm', 0)} in front and behind` : null
  const where = ends && faces ? phrase`${ends} and ${faces}` : (ends ?? faces ?? phrase`nothing`)
  return phrase`it would stick out by ${where}. ${bearingWords(situation, Math.max(out(long), out(deep)))}`
}

const BEARING = {
  rimmed: 'A rimmed tank bears along its frame, and all of the frame has to be carried.',
  other: 'A flat bottom has to be carried all over.',
}

/** Only stated glass is reckoned: of acrylic nobody knows how far it gives way in years. */
function bearingWords({ tank, corners }: Situation, outMm: number): Phrase {
  if (tank.style === 'rimmed') return phrase`${BEARING.rimmed}`
  const [corner] = corners
  if (!corner || tank.material !== 'glass' || tank.bottomMm === undefined || tank.glassMm === undefined) return phrase`${BEARING.other}`
  const kgPerL = corner.mass.waterKg / corner.geometry.waterVolumeL
  const stress = overhangStressPa({
    outM: outMm / 1000,
    thicknessM: tank.bottomMm / 1000,
    pressurePa: kgPerL * FREE_FALL * corner.geometry.insideHeightMm,
    edgeNPerM: (PANEL_DENSITY.glass * FREE_FALL * tank.glassMm * tank.heightMm) / 1e6,
  })
  const bent = phrase`As a strip it would be bent to ${inNmm2(stress)} over the stand's edge`
  return stress > LASTING_STRENGTH_PA
    ? phrase`${BEARING.other} ${bent}: beyond the ${inNmm2(LASTING_STRENGTH_PA)} that glass bears for long.`
    : phrase`${BEARING.other} ${bent}, if that edge were straight all along; a hard spot under it takes many times as much.`
}

const inNmm2 = (pascals: number): string => `${(pascals / 1e6).toFixed(1)} N/mm²`
