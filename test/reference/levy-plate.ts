/**
 * Bending of a thin rectangular plate under a load that varies in height only, by the Lévy series: simply supported at both sides and the bottom, simply
 * supported or free at the top. An oracle for the coefficients of the engine, written from the textbook and sharing nothing with it.
 *
 * Source: Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), articles 29 to 31 and 48.
 */
export interface Plate {
  /** Length over height. */
  ratio: number
  poisson: number
  top: 'held' | 'free'
  load: 'uniform' | 'hydrostatic'
}

export interface Bending {
  /** Largest deflection, in q₀h⁴/D. */
  bow: number
  /** Deflection at the middle of the plate, in q₀h⁴/D. */
  bowAtMiddle: number
  /** Largest principal moment, in q₀h². */
  moment: number
  /** Along the length at the middle of the plate; at the middle of its top edge, in q₀h². */
  momentAtMiddle: number
  momentAtTop: number
  /** Largest along the length on the line up the middle, in q₀h². */
  momentAlong: number
  /** Upright at six tenths of the way from the shallow end to the deep one, where a square has its largest; in q₀h². */
  momentLow: number
}

/** Height 1, stiffness 1, load 1 at the bottom. Odd terms only. */
const TERMS = 31
const GRID = 40

interface Term {
  wave: number
  particular: number
  constants: number[]
}

/** Values of the four decaying solutions and their first three derivatives at a height. */
function basis(wave: number, y: number): number[][] {
  const [a, b] = [Math.exp(-wave * y), Math.exp(-wave * (1 - y))]
  const [p, q] = [wave * y, wave * (1 - y)]
  return [
    [a, -wave * a, wave ** 2 * a, -(wave ** 3) * a],
    [p * a, wave * (1 - p) * a, wave ** 2 * (p - 2) * a, wave ** 3 * (3 - p) * a],
    [b, wave * b, wave ** 2 * b, wave ** 3 * b],
    [q * b, -wave * (1 - q) * b, wave ** 2 * (q - 2) * b, -(wave ** 3) * (3 - q) * b],
  ]
}

/** Load and its slope on the particular solution: 1 − y or 1. */
const shapeAt = (load: Plate['load'], y: number): number => (load === 'uniform' ? 1 : 1 - y)
const slopeOf = (load: Plate['load']): number => (load === 'uniform' ? 0 : -1)

/** Gaussian elimination with partial pivoting. */
function solve(rows: number[][]): number[] {
  const n = rows.length
  for (let column = 0; column < n; column += 1) {
    const pivot = rows
      .slice(column)
      .reduce((best, row, at) => (Math.abs(row[column]!) > Math.abs(rows[best]![column]!) ? at + column : best), column)
    ;[rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!]
    for (let row = 0; row < n; row += 1) {
      if (row === column) continue
      const factor = rows[row]![column]! / rows[column]![column]!
      for (let at = column; at <= n; at += 1) rows[row]![at]! -= factor * rows[column]![at]!
    }
  }
  return rows.map((row, at) => row[n]! / row[at]!)
}

function termOf(plate: Plate, m: number): Term {
  const wave = (m * Math.PI) / plate.ratio
  const particular = (4 * plate.ratio ** 4) / (m ** 5 * Math.PI ** 5)
  const { poisson: nu, load } = plate
  const at = (y: number, row: (f: number[]) => number): number[] => basis(wave, y).map(row)
  const bottom = shapeAt(load, 0) * particular
  const top = shapeAt(load, 1) * particular
  const slope = slopeOf(load) * particular
  const rows = [
    [...at(0, (f) => f[0]!), -bottom],
    [...at(0, (f) => f[2]! - nu * wave ** 2 * f[0]!), nu * wave ** 2 * bottom],
    ...(plate.top === 'held'
      ? [
          [...at(1, (f) => f[0]!), -top],
          [...at(1, (f) => f[2]! - nu * wave ** 2 * f[0]!), nu * wave ** 2 * top],
        ]
      : [
          [...at(1, (f) => f[2]! - nu * wave ** 2 * f[0]!), nu * wave ** 2 * top],
          [...at(1, (f) => f[3]! - (2 - nu) * wave ** 2 * f[1]!), (2 - nu) * wave ** 2 * slope],
        ]),
  ]
  return { wave, particular, constants: solve(rows) }
}

/** Deflection and the three moments at a point. */
function stateAt(plate: Plate, terms: readonly Term[], x: number, y: number) {
  let [w, wxx, wyy, wxy] = [0, 0, 0, 0]
  for (const { wave, particular, constants } of terms) {
    const values = basis(wave, y)
    const sum = (order: number): number => constants.reduce((total, constant, at) => total + constant * values[at]![order]!, 0)
    const value = sum(0) + particular * shapeAt(plate.load, y)
    const slope = sum(1) + particular * slopeOf(plate.load)
    const [sine, cosine] = [Math.sin(wave * x), Math.cos(wave * x)]
    w += value * sine
    wxx -= wave ** 2 * value * sine
    wyy += sum(2) * sine
    wxy += wave * slope * cosine
  }
  const { poisson: nu } = plate
  return { w, mx: -(wxx + nu * wyy), my: -(wyy + nu * wxx), mxy: (1 - nu) * wxy }
}

export function bendingOf(plate: Plate): Bending {
  const terms = Array.from({ length: TERMS }, (_, index) => termOf(plate, 2 * index + 1))
  let [bow, moment, momentAlong] = [0, 0, 0]
  for (let i = 0; i <= GRID; i += 1)
    for (let j = 0; j <= GRID; j += 1) {
      const { w, mx, my, mxy } = stateAt(plate, terms, (plate.ratio * i) / (2 * GRID), j / GRID)
      bow = Math.max(bow, Math.abs(w))
      if (i === GRID) momentAlong = Math.max(momentAlong, mx)
      const [middle, radius] = [(mx + my) / 2, Math.hypot((mx - my) / 2, mxy)]
      moment = Math.max(moment, Math.abs(middle + radius), Math.abs(middle - radius))
    }
  const middle = stateAt(plate, terms, plate.ratio / 2, 0.5)
  return {
    bow,
    bowAtMiddle: middle.w,
    moment,
    momentAlong,
    momentAtMiddle: middle.mx,
    momentAtTop: stateAt(plate, terms, plate.ratio / 2, 1).mx,
    momentLow: stateAt(plate, terms, plate.ratio / 2, 0.4).my,
  }
}
