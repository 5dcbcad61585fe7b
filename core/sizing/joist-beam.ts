/** A load along a simply supported beam, spread evenly from one place to another; a point load where both are the same. Newtons and metres. */
export interface BeamLoad {
  newtons: number
  fromM: number
  toM: number
}

export interface BeamResponse {
  /** Larger of the two support reactions, N. */
  shearN: number
  /** Largest bending moment, N m. */
  momentNm: number
  /** Deflection at mid-span times the stiffness EI, N m³. */
  midDeflection: number
}

const centreOf = ({ fromM, toM }: BeamLoad): number => (fromM + toM) / 2

function momentAt(loads: readonly BeamLoad[], nearN: number, x: number): number {
  return loads.reduce((moment, { newtons, fromM, toM }) => {
    if (x <= fromM) return moment
    if (x >= toM) return moment - newtons * (x - (fromM + toM) / 2)
    return moment - (newtons * (x - fromM) ** 2) / (2 * (toM - fromM))
  }, nearN * x)
}

/** Where the shear is nought in an even load, or changes under a weight: there alone the moment may be largest. Beside the load it is no more than elsewhere. */
function turnOf(load: BeamLoad, loads: readonly BeamLoad[], nearN: number): number {
  const { fromM, toM } = load
  const beforeN = loads.reduce((sum, other) => sum + (other.toM <= fromM ? other.newtons : 0), 0)
  const onStretchN = loads.reduce((sum, other) => sum + (other.fromM === fromM && other.toM === toM ? other.newtons : 0), 0)
  return fromM + ((nearN - beforeN) * (toM - fromM)) / onStretchN
}

/**
 * Bending, end shear and mid-span deflection of a simply supported beam under loads that lie on the same stretch or apart.
 *
 * Units:  N, m; N m³ for the deflection, which is EI times metres.
 * Range:  every load between 0 and the span; the span above 0.
 * Errors: none.
 * Source: statics; deflection by the unit-load theorem, exact for these loads since Simpson's rule is for cubics. Any text on strength of materials.
 *
 * @example beamResponse([{ newtons: 8, fromM: 0, toM: 4 }], 4).momentNm // 4, which is w·l²/8
 */
export function beamResponse(loads: readonly BeamLoad[], spanM: number): BeamResponse {
  const totalN = loads.reduce((sum, { newtons }) => sum + newtons, 0)
  const nearN = loads.reduce((sum, load) => sum + (load.newtons * (spanM - centreOf(load))) / spanM, 0)
  const moments = loads.map((load) => momentAt(loads, nearN, turnOf(load, loads, nearN)))
  return { shearN: Math.max(nearN, totalN - nearN), momentNm: Math.max(0, ...moments), midDeflection: midDeflectionOf(loads, nearN, spanM) }
}

function midDeflectionOf(loads: readonly BeamLoad[], nearN: number, spanM: number): number {
  const places = [...new Set([0, spanM / 2, spanM, ...loads.flatMap(({ fromM, toM }) => [fromM, toM])])].sort((a, b) => a - b)
  const product = (x: number): number => (momentAt(loads, nearN, x) * Math.min(x, spanM - x)) / 2
  return places.slice(1).reduce((sum, to, index) => {
    const from = places[index] ?? 0
    return sum + ((to - from) / 6) * (product(from) + 4 * product((from + to) / 2) + product(to))
  }, 0)
}
