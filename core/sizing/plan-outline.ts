/** Millimetres; x to the right along the front, y from the back towards the viewer. */
export interface Point {
  x: number
  y: number
}

/** One side of a plan, from its corner to the next one's. Sides run one way round, and bulge outwards by their sagitta; a straight one has none. */
export interface Side {
  from: Point
  sagittaMm: number
}
export type Outline = readonly Side[]

/** What an outline encloses. */
export interface PlanFigures {
  areaMm2: number
  /** Length all round. */
  roundMm: number
  /** Centre of the area. */
  centre: Point
  /** From the centre of the area to the side that is nearest to it: what a push has to lift the centre over. */
  leverMm: number
}

/** A circular segment on its chord: half its angle, radius, area, arc, and how far the middle of its area lies out from the chord. */
function segmentOn(chordMm: number, sagittaMm: number) {
  const radius = (chordMm ** 2 / 4 + sagittaMm ** 2) / (2 * sagittaMm)
  const half = Math.atan2(chordMm / 2, radius - sagittaMm)
  const area = radius ** 2 * (half - Math.sin(half) * Math.cos(half))
  return { half, radius, area, arc: 2 * radius * half, out: chordMm ** 3 / (12 * area) - (radius - sagittaMm) }
}

/**
 * Area, length all round and centre of a plan of straight sides and arcs: the polygon on its corners, and a circular segment on each side that bulges.
 *
 * Units:  mm and mm², unrounded.
 * Range:  a convex outline with its sides clockwise as seen with y downwards; a sagitta of at most the chord.
 * Source: shoelace formula; a segment of angle 2α has the area r²(α − sin α·cos α) and its centre (2r·sin³α)/(3(α − sin α·cos α)) from that of the circle
 *         (any statics text, table of centroids).
 *
 * @example // half a disc of 1 m: area π/2 m², centre 4/(3π) m from its diameter
 * planFigures([{ from: { x: -1000, y: 0 }, sagittaMm: 0 }, { from: { x: 1000, y: 0 }, sagittaMm: 1000 }]).centre.y // 424.41
 */
export function planFigures(outline: Outline): PlanFigures {
  let [areaMm2, roundMm, momentX, momentY] = [0, 0, 0, 0]
  for (const [from, to, sagittaMm] of sidesOf(outline)) {
    const cross = (from.x * to.y - to.x * from.y) / 2
    areaMm2 += cross
    momentX += (cross * (from.x + to.x)) / 3
    momentY += (cross * (from.y + to.y)) / 3
    const chord = Math.hypot(to.x - from.x, to.y - from.y)
    if (sagittaMm <= 0) {
      roundMm += chord
      continue
    }
    const { area, arc, out } = segmentOn(chord, sagittaMm)
    areaMm2 += area
    roundMm += arc
    momentX += area * ((from.x + to.x) / 2 + ((to.y - from.y) / chord) * out)
    momentY += area * ((from.y + to.y) / 2 - ((to.x - from.x) / chord) * out)
  }
  const centre = { x: momentX / areaMm2, y: momentY / areaMm2 }
  return { areaMm2, roundMm, centre, leverMm: leverOf(outline, centre) }
}

/** To a straight side its distance, to an arc that of the tangent at its middle. */
function leverOf(outline: Outline, centre: Point): number {
  let lever = Infinity
  for (const [from, to, sagittaMm] of sidesOf(outline)) {
    const chord = Math.hypot(to.x - from.x, to.y - from.y)
    const inwards = ((to.x - from.x) * (centre.y - from.y) - (to.y - from.y) * (centre.x - from.x)) / chord
    lever = Math.min(lever, inwards + sagittaMm)
  }
  return lever
}

/** Each side with both its corners. */
const sidesOf = (outline: Outline): Array<[from: Point, to: Point, sagittaMm: number]> =>
  outline.flatMap((side, index) => {
    const next = outline[(index + 1) % outline.length]
    return next ? [[side.from, next.from, side.sagittaMm] as [Point, Point, number]] : []
  })

/** A side's length along it, and whether it is an arc. */
export const panelsOf = (outline: Outline): Array<{ lengthMm: number; curved: boolean }> =>
  sidesOf(outline).map(([from, to, sagittaMm]) => {
    const chord = Math.hypot(to.x - from.x, to.y - from.y)
    return sagittaMm > 0 ? { lengthMm: segmentOn(chord, sagittaMm).arc, curved: true } : { lengthMm: chord, curved: false }
  })

/** Chords that stand for an arc: the area of half a disc is then short by six parts in a thousand, that of a bow by less. Own. */
const CHORDS = 16

/**
 * Corners of an outline with chords in place of its arcs, seen from a point.
 *
 * @example cornersFrom(outline, { x: 0, y: 0 }).length // 4 of a rectangle, 32 of a circle of two arcs
 */
export const cornersFrom = (outline: Outline, { x, y }: Point): Point[] =>
  sidesOf(outline).flatMap(([from, to, sagittaMm]) => {
    const corner = { x: from.x - x, y: from.y - y }
    if (sagittaMm <= 0) return [corner]
    const [dx, dy] = [to.x - from.x, to.y - from.y]
    const chord = Math.hypot(dx, dy)
    const { half, radius } = segmentOn(chord, sagittaMm)
    return Array.from({ length: CHORDS }, (_, step) => {
      if (step === 0) return corner
      const angle = half * ((2 * step) / CHORDS - 1)
      const [along, out] = [0.5 + (radius * Math.sin(angle)) / chord, (radius * (Math.cos(angle) - 1) + sagittaMm) / chord]
      return { x: corner.x + along * dx + out * dy, y: corner.y + along * dy - out * dx }
    })
  })
