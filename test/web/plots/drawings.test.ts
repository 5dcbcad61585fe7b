import { describe, expect, it } from 'vitest'
import { METRIC, US } from '../../../core/units/say.ts'
import { cordKnots, cordProgress } from '../../../web/plots/cord.ts'
import { dripLoopDrawing, dripLoopPlaces } from '../../../web/plots/drip-loop.ts'
import { levelDrawing } from '../../../web/plots/level.ts'
import { tankDrawings, type TankFigure } from '../../../web/plots/tank-drawing.ts'

const tank = (letter: string, lengthMm: number, change: Partial<TankFigure> = {}): TankFigure => ({
  letter, lengthMm, widthMm: 457, heightMm: 533, waterBelowRimMm: 40, substrateDepthMm: 50, standHeightMm: 711, style: 'rimmed', ...change,
}) // prettier-ignore
const widths = (svg: string): number[] => [...svg.matchAll(/class="tank-glass"[^>]* width="([\d.]+)"/g)].map((match) => Number(match[1]))
const heights = (svg: string): number[] => [...svg.matchAll(/class="tank-glass"[^>]* height="([\d.]+)"/g)].map((match) => Number(match[1]))

describe('tank drawings', () => {
  const drawn = tankDrawings([tank('A', 1219), tank('B', 914)], { id: 't', reader: US, stand: 'cut' })
  it('draws all builds to one scale', () => {
    expect((widths(drawn[0]!)[0] ?? 0) / (widths(drawn[1]!)[0] ?? 0)).toBeCloseTo(1219 / 914, 2)
  })
  it('draws front, side and height to the same scale', () => {
    const [front = 0, side = 0] = widths(drawn[0]!)
    expect(front / side).toBeCloseTo(1219 / 457, 1)
    expect(front / (heights(drawn[0]!)[0] ?? 0)).toBeCloseTo(1219 / 533, 1)
  })
  it("tells lengths in the reader's units", () => {
    expect(drawn[1]).toContain('>36 in<')
    expect(tankDrawings([tank('A', 900)], { id: 't', reader: METRIC, stand: 'whole' })[0]).toContain('>90 cm<')
  })
  it('leaves out a build without a tank and keeps the order', () => {
    const some = tankDrawings([null, tank('B', 900)], { id: 't', reader: US, stand: 'cut' })
    expect(some[0]).toBe('')
    expect(some[1]).toContain('id="t-B-t"')
    expect(tankDrawings([null], { id: 't', reader: US, stand: 'cut' })).toEqual([''])
  })
  it('stays inside its width from a nano tank to the largest', () => {
    for (const svg of tankDrawings([tank('A', 200, { widthMm: 200, heightMm: 200 }), tank('B', 3000, { widthMm: 900 })], {
      id: 't',
      reader: METRIC,
      stand: 'whole',
      width: 180,
    })) {
      const edges = [...svg.matchAll(/class="tank-glass" x="([-\d.]+)"[^>]* width="([\d.]+)"/g)].map((match) => [
        Number(match[1]),
        Number(match[1]) + Number(match[2]),
      ])
      expect(edges).toHaveLength(2)
      for (const [left = -1, right = 999] of edges) expect(left >= 0 && right <= 180).toBe(true)
    }
  })
})

describe('a tank that is no box', () => {
  const draw = (change: Partial<TankFigure>) =>
    tankDrawings([tank('A', 600, { widthMm: 600, ...change })], { id: 't', reader: METRIC, stand: 'cut' })[0] ?? ''
  const planOf = (svg: string): string => /class="tank-plan" d="([^"]+)"/.exec(svg)?.[1] ?? ''

  it('is drawn from the front and from above, at one scale', () => {
    const svg = draw({ plan: { form: 'cylinder' } })
    expect(svg).toContain('front and from above')
    expect(svg).toContain('>60 cm deep<')
    const [, radius = '0'] = /A([\d.]+)/.exec(planOf(svg)) ?? []
    expect(Number(radius) * 2).toBeCloseTo(widths(svg)[0] ?? 0, 0)
    expect(widths(svg)).toHaveLength(1)
  })

  it.each([
    ['hexagon', 6, 0],
    ['corner_cut', 5, 0],
    ['corner_round', 2, 1],
    ['bow_front', 3, 1],
    ['cylinder', 0, 2],
  ] as const)('is outlined as a %s', (form, lines, arcs) => {
    const path = planOf(draw({ plan: { form, bowMm: 80, endMm: 200 } }))
    expect([path.split('L').length - 1, path.split('A').length - 1]).toEqual([lines, arcs])
  })

  it('stays inside its frame however deep it is', () => {
    const svg = draw({ heightMm: 200, widthMm: 600, plan: { form: 'corner_cut', endMm: 200 } })
    const height = Number(/viewBox="0 0 [\d.]+ ([\d.]+)"/.exec(svg)?.[1])
    const ys = [...planOf(svg).matchAll(/[ML][\d.-]+ ([\d.-]+)/g)].map((match) => Number(match[1]))
    expect(ys.length).toBeGreaterThan(4)
    for (const y of ys) expect(y >= 0 && y <= height).toBe(true)
  })
})

describe('the drip loop', () => {
  const figures = { neededMm: 1700, lowPointMm: 200, exitHeightMm: 1300, outletHeightMm: 300, distanceMm: 600 }
  it('draws heights to one scale from the floor', () => {
    const at = dripLoopPlaces(figures)
    const floor = at.toY(0)
    expect((floor - at.outlet) / (floor - at.exit)).toBeCloseTo(300 / 1300, 10)
    expect((floor - at.low) / (floor - at.exit)).toBeCloseTo(200 / 1300, 10)
  })
  it("says the drop under the outlet, in the reader's units", () => {
    expect(dripLoopDrawing(figures, { id: 'd', reader: METRIC })).toContain('>10 cm<')
    expect(dripLoopDrawing(figures, { id: 'd', reader: US, to: 'strip' })).toMatch(/to the strip beside the rim at .*>Strip at /s)
    expect(dripLoopDrawing({ ...figures, lowPointMm: 198.4 }, { id: 'd', reader: US })).toContain('>4 in<')
    // 100 mm are 3.94 in: told as what to keep to, and not as less.
    expect(dripLoopDrawing(figures, { id: 'd', reader: US })).toContain('>4 in<')
  })
  it('says where the strip hangs that the figures are of', () => {
    const onWall = dripLoopDrawing({ ...figures, to: 'wall_strip' }, { id: 'd', reader: METRIC })
    expect(onWall).toMatch(/to the strip on the wall beside the outlet at 30 cm.*>Strip at 30 cm<.*>On the wall:</s)
    expect(dripLoopDrawing({ ...figures, to: 'strip' }, { id: 'd', reader: METRIC })).toMatch(/to the strip beside the rim at 30 cm/)
  })
  it('says so of a cord that leaves inside the stand, and where the words of the cord take the line above', () => {
    const from = (exitHeightMm: number, rimMm?: number) =>
      dripLoopDrawing({ ...figures, exitHeightMm, lowPointMm: 50, to: 'wall_strip' }, { id: 'd', reader: METRIC, what: 'Pellick', rimMm })
    for (const exitMm of [100, 350]) expect(from(exitMm, 1293)).toMatch(/>Strip at 30 cm<.*>On the wall:</s)
    const close = from(420)
    expect(close).toContain('>On wall at 30 cm<')
    expect(close).not.toContain('On the wall:')
  })
  it('says to what its lengths are rounded, and that the drop is rounded up', () => {
    // 443.5 mm are 17.46 in, and 4 in are the least that 100 mm are told as.
    const drawn = dripLoopDrawing({ ...figures, outletHeightMm: 443.5, lowPointMm: 343.5 }, { id: 'd', reader: US })
    expect(drawn).toContain('>Outlet at 17.5 in<')
    expect(drawn).toContain('>To 0.1 in, the drop rounded up<')
    expect(dripLoopDrawing(figures, { id: 'd', reader: { ...METRIC, decimal: ',' } })).toContain('>To 0,1 cm, the drop rounded up<')
  })
  it('can be drawn with an outlet above the tank and with a loop that would touch the floor', () => {
    expect(dripLoopPlaces({ ...figures, outletHeightMm: 1800, lowPointMm: 1200 }).outlet).toBeLessThan(
      dripLoopPlaces({ ...figures, outletHeightMm: 1800 }).exit,
    )
    expect(dripLoopPlaces({ ...figures, lowPointMm: -40 }).low).toBe(dripLoopPlaces(figures).toY(0))
  })
  it('draws the tank as tall as it is', () => {
    const svg = dripLoopDrawing(figures, { id: 'd', reader: METRIC, tankHeightMm: 650 })
    const rim = Number(/class="loop-tank"[^>]* y="([\d.]+)"/.exec(svg)?.[1])
    const tall = Number(/class="loop-tank"[^>]* height="([\d.]+)"/.exec(svg)?.[1])
    const at = dripLoopPlaces(figures)
    expect(rim).toBeCloseTo(at.exit, 0)
    // half of 1300 mm, on the scale of the heights
    expect(tall / (at.toY(0) - at.exit)).toBeCloseTo(0.5, 2)
  })
  it('keeps the words of a cord that goes up to a strip out of its way', () => {
    const up = { neededMm: 1962, lowPointMm: 250, exitHeightMm: 350, outletHeightMm: 1293, distanceMm: 610 }
    const wordsAt = (figures: typeof up, text: string): { x: number; y: number } => {
      const svg = dripLoopDrawing(figures, { id: 'd', reader: METRIC, what: 'Pellick', rimMm: 1293, to: 'strip' })
      const [, x, y] = new RegExp(`<text[^>]* x="([\\d.]+)" y="([\\d.]+)"[^>]*>${text}`).exec(svg) ?? []
      return { x: Number(x), y: Number(y) }
    }
    const floor = dripLoopPlaces(up, 1293).toY(0)
    for (const text of ['Leaves the stand', 'Pellick']) expect(wordsAt(up, text).y).toBeGreaterThan(floor)
    // Near the floor the low point's own words stand there: the name goes over the tank, left of the strip's.
    const low = { ...up, lowPointMm: 50, exitHeightMm: 150 }
    expect(wordsAt(low, 'Pellick').y).toBeLessThan(dripLoopPlaces(low, 1293).rim)
    expect(wordsAt(low, 'Pellick').x).toBeLessThan(wordsAt(low, 'Strip at').x)
  })
  it('escapes whose cord it is', () => {
    expect(dripLoopDrawing(figures, { id: 'd', reader: METRIC, what: '<b>' })).not.toContain('<b>')
  })
})

describe('the cord', () => {
  const place = (svg: string): string[] => [...svg.matchAll(/class="knot-here" cx="([\d.]+)"/g)].map((match) => match[1] ?? '')
  it('sags at the current step and nowhere else', () => {
    const svg = cordProgress({ done: [true, true, false, false, false], current: 2 }, { id: 'c', width: 212 })
    // own arithmetic: five knots over 200 px from 6 on
    expect(place(svg)).toEqual(['106'])
    expect(svg.match(/knot-done/g)).toHaveLength(2)
    expect(svg.match(/knot-open/g)).toHaveLength(2)
  })
  it('hangs level when all is done', () => {
    expect(place(cordProgress({ done: [true, true], current: null }, { id: 'c' }))).toEqual([])
  })
  it('keeps its first and last knot on the sheet', () => {
    expect(cordKnots(24, 358)[0]).toBe(6)
    expect(cordKnots(24, 358).at(-1)).toBeCloseTo(352, 10)
  })
})

it('makes the same drawing twice', () => {
  expect(levelDrawing({ id: 'l', paper: true })).toBe(levelDrawing({ id: 'l', paper: true }))
  expect(levelDrawing({ id: 'l', paper: true })).not.toContain('var(')
})
