import { fc, test } from '@fast-check/vitest'
import { describe, expect, it } from 'vitest'
import type { FloorPlan } from '../../../core/sizing/floor-plan.ts'
import type { HeatCurve } from '../../../core/sizing/heat-curve.ts'
import type { LightAlong } from '../../../core/sizing/light-along.ts'
import type { PumpCurveFigure } from '../../../core/sizing/report.ts'
import { METRIC, US } from '../../../core/units/say.ts'
import { axisOf } from '../../../web/plots/axis.ts'
import { floorPlaces, floorPlot, sayFloor } from '../../../web/plots/floor-plot.ts'
import { heatPlot, sayHeat } from '../../../web/plots/heat-plot.ts'
import { lightPlot, sayLightAlong } from '../../../web/plots/light-plot.ts'
import { pumpPlot, sayPump } from '../../../web/plots/pump-plot.ts'
import { collisions, letterSizes, spilling } from './label-boxes.ts'

const READERS = [US, METRIC]
/** A third of a page, the narrowest column on a phone, a phone of 390 px, the desk's report, the widest that is drawn. */
const WIDTHS = [236, 288, 358, 348, 420]
const id = 'p'

const heat = (per: number, heaters: [number, number] | null): HeatCurve => ({
  points: Array.from({ length: 13 }, (_, index) => {
    const roomC = 14 + (index * 16) / 12
    const gap = Math.max(0, 25 - roomC)
    return { roomC, lowW: gap * per * 0.5, usualW: gap * per, highW: gap * per * 1.4 + 10 }
  }),
  targetC: 25,
  coldestRoomC: 18,
  warmestRoomC: 26,
  ...(heaters ? { oneHeaterW: heaters[0], allHeatersW: heaters[1] } : {}),
})

const pump = (floorLph: number, ceilingLph: number | null, scale = 1): PumpCurveFigure => {
  const flows = Array.from({ length: 25 }, (_, step) => (1500 * scale * step) / 24)
  const headOf = (k: number) => (flowLph: number) => ({ flowLph, headM: 2 * k * (flowLph / (1500 * scale)) ** 2 })
  return {
    filter: 'Pellick C-1400',
    pump: flows.map((flowLph) => ({ flowLph, headM: 2 * (1 - (flowLph / (1500 * scale)) ** 2) })),
    clean: flows.map(headOf(1.4)).filter(({ headM }) => headM <= 2),
    loaded: flows.map(headOf(2.3)).filter(({ headM }) => headM <= 2),
    cleanAt: headOf(1.4)((1500 * scale) / Math.sqrt(2.4)),
    loadedAt: headOf(2.3)((1500 * scale) / Math.sqrt(3.3)),
    cleanLph: { low: 830 * scale, high: 1050 * scale },
    loadedLph: { low: 690 * scale, high: 900 * scale },
    floorLph,
    ceilingLph,
  }
}

const light = (umol: number, lengthMm = 1199): LightAlong => ({
  points: Array.from({ length: 13 }, (_, index) => {
    const off = index / 6 - 1
    return { alongMm: (lengthMm * index) / 12, lowUmol: umol * (1 - 0.4 * off ** 4), highUmol: 1.8 * umol * (1 - 0.4 * off ** 4) }
  }),
  endsShare: 0.6,
  frontShare: 0.8,
})

const plan = (change: Partial<FloorPlan> = {}): FloorPlan => ({
  spanMm: 3658, spacingMm: 406, lie: 'bearing_wall', lieStated: true, path: 'end_panels', pathStated: true, alongMm: 457, acrossMm: 1219, centreMm: 279, massKg: 385, loadPercent: 136, governs: 'shear', ...change,
}) // prettier-ignore

describe('letters of a plot', () => {
  const drawn = (reader: typeof US, width: number, paper = false): string[] => [
    heatPlot(heat(15, [100, 200]), { id, reader, width, paper }),
    heatPlot(heat(60, [25, 50]), { id, reader, width, paper }),
    heatPlot(heat(6, [300, 300]), { id, reader, width, paper }),
    heatPlot(heat(6, null), { id, reader, width, paper }),
    pumpPlot(pump(951, 1902), { id, reader, width, paper }),
    pumpPlot(pump(1000, 1050), { id, reader, width, paper }),
    pumpPlot(pump(60, null, 0.1), { id, reader, width, paper }),
    pumpPlot(pump(9000, 20_000, 10), { id, reader, width, paper }),
    lightPlot(light(33), { id, reader, width, paper, plants: 'medium' }),
    lightPlot({ ...light(110), dimmedTo: 0.3 }, { id, reader, width, paper, plants: 'medium' }),
    lightPlot(light(200), { id, reader, width, paper, plants: 'low' }),
    lightPlot(light(4, 280), { id, reader, width, paper, plants: 'none' }),
    floorPlot(plan(), { id, reader, width, paper }),
    floorPlot(plan({ lie: 'along', lieStated: false, alongMm: 1219, acrossMm: 457, centreMm: 1829, path: 'feet' }), {
      id,
      reader,
      width,
      paper,
    }),
    floorPlot(plan({ lie: 'across', acrossMm: 3000, spanMm: 9000, spacingMm: 1200, path: 'full', centreMm: 4500 }), {
      id,
      reader,
      width,
      paper,
    }),
    floorPlot(plan({ lie: 'across', centreMm: 229, answeredCentreMm: 1829 }), { id, reader, width, paper }),
    floorPlot(plan({ lie: 'across', spanMm: 1200, acrossMm: 3000, centreMm: 229, answeredCentreMm: 600 }), { id, reader, width, paper }),
    floorPlot(plan({ acrossMm: 250, alongMm: 250, spanMm: 600, spacingMm: 150, centreMm: 175 }), { id, reader, width, paper }),
  ]
  it.each(READERS.flatMap((reader) => WIDTHS.map((width) => ({ reader, width, system: reader.system }))))(
    'stand apart, on their sheet and at 12 px or more, in $system units at $width px',
    ({ reader, width }) => {
      for (const svg of [...drawn(reader, width), ...drawn(reader, width, true)]) {
        expect(collisions(svg)).toEqual([])
        expect(spilling(svg)).toEqual([])
        expect(Math.min(...letterSizes(svg))).toBeGreaterThanOrEqual(12)
      }
    },
  )
})

describe('an axis', () => {
  it("has round figures in the reader's unit", () => {
    const axis = axisOf({ unit: 'degC', low: 14, high: 30, from: 0, to: 300, reader: US, count: 6 })
    expect(axis.unit).toBe('°F')
    expect(axis.ticks.map(({ text }) => text)).toEqual(['60', '65', '70', '75', '80', '85'])
    // 25 °C are 77 °F, by definition of the scales: 0.6875 of the way from 14 to 30
    expect(axis.place(25)).toBeCloseTo(206.25, 6)
  })
  it('keeps decimals only where its steps need any', () => {
    expect(axisOf({ unit: 'm', low: 0, high: 2, from: 0, to: 150, reader: METRIC, count: 4 }).ticks.map(({ text }) => text)).toEqual(['0.0', '0.5', '1.0', '1.5', '2.0']) // prettier-ignore
    expect(axisOf({ unit: 'L/h', low: 0, high: 1500, from: 0, to: 150, reader: METRIC, count: 3 }).ticks.map(({ text }) => text)).toEqual(['0', '500', '1,000', '1,500']) // prettier-ignore
  })
})

describe('heat against the room', () => {
  const level = (svg: string, name: string): number => Number(new RegExp(`class="${name}" d="M[\\d.]+ ([\\d.]+)`).exec(svg)?.[1])
  it('draws heaters on the scale of the losses', () => {
    const svg = heatPlot(heat(10, [154, 154]), { id, reader: METRIC, width: 358 })
    // in the coldest room drawn, 14 °C, the most that is lost is 11 K × 10 × 1.4 + 10 = 164 W: the heater lies a little under it
    const most = level(svg, 'heat-high')
    const heater = level(svg, 'heat-heater')
    const floor = 24 + 150
    expect((floor - heater) / (floor - most)).toBeCloseTo(154 / 164, 2)
  })
  it('says the coldest room in one sentence', () => {
    // own arithmetic: 7 K × 15 × 0.5 and 7 K × 15 × 1.4 + 10
    expect(sayHeat(heat(15, [100, 200]), METRIC)).toBe(
      'With the room at its coldest, 18.0 °C, holding 25.0 °C takes 53 W to 157 W; all heaters give 200 W, one of them alone 100 W.',
    )
    expect(sayHeat(heat(15, null), US)).toMatch(/64\.4 °F.*77 °F.*how strong the heaters are is not known\.$/)
  })
})

describe('the pump', () => {
  it('says flow and wish in one sentence', () => {
    expect(sayPump(pump(951, null), METRIC)).toBe(
      'Pellick C-1400 moves about 968 L/h with clean media and 826 L/h with loaded ones; the animals want at least 951 L/h of all filters together.',
    )
  })
  it('draws the meeting of clean media on the pump’s own curve', () => {
    const svg = pumpPlot(pump(951, null), { id, reader: METRIC, width: 358 })
    const [, x = 0, y = 0] = (
      /class="pump-clean" cx="([\d.]+)" cy="([\d.]+)"/g.exec(svg.slice(svg.lastIndexOf('class="pump-clean"'))) ?? []
    ).map(Number)
    const points = [...(/class="pump-curve" d="([^"]+)"/.exec(svg)?.[1] ?? '').matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(([, px, py]) => [Number(px), Number(py)] as const) // prettier-ignore
    const after = points.findIndex(([px]) => px >= x)
    const [[x0, y0], [x1, y1]] = [points[after - 1] ?? [0, 0], points[after] ?? [1, 0]]
    expect(y).toBeCloseTo(y0 + ((y1 - y0) * (x - x0)) / (x1 - x0), 0)
  })
})

describe('light along the tank', () => {
  it('says middle, ends and wish in one go', () => {
    expect(sayLightAlong(light(30), 'medium', METRIC)).toBe(
      'Undimmed, 30 to 54 µmol/m²s reach the substrate in the middle of the tank; at the ends it is 60 % of that, at the front pane 80 %. Plants of medium light want 30 to 60 µmol/m²s.',
    )
  })
  it('says and draws the dimmed light first where the check dims it, and the undimmed behind it', () => {
    const dimmed = { ...light(60), dimmedTo: 0.5 }
    expect(sayLightAlong(dimmed, 'medium', METRIC)).toBe(
      'Dimmed to 50 %, 30 to 54 µmol/m²s reach the substrate in the middle of the tank, undimmed 60 to 108 µmol/m²s; at the ends it is 60 % of that, at the front pane 80 %. Plants of medium light want 30 to 60 µmol/m²s.',
    )
    const svg = lightPlot(dimmed, { id, reader: METRIC, width: 358, plants: 'medium' })
    const middleOf = (name: string): number =>
      Number(new RegExp(`class="${name}" d="(?:[ML][\\d.]+ [\\d.]+){6}L[\\d.]+ ([\\d.]+)`).exec(svg)?.[1])
    const [, top = 0, tall = 0] = (/class="light-band"[^>]* y="([\d.]+)"[^>]* height="([\d.]+)"/.exec(svg) ?? []).map(Number)
    // Half of 60 in the middle is the band's lower edge, 60 undimmed its upper one.
    expect(middleOf('light-dimmed-dark')).toBeCloseTo(top + tall, 0)
    expect(middleOf('light-dark')).toBeCloseTo(top, 0)
    expect(svg).toMatch(/class="light-dark"[^>]*stroke-dasharray/)
    expect(svg).not.toMatch(/class="light-dimmed-dark"[^>]*stroke-dasharray/)
    expect(lightPlot(light(60), { id, reader: METRIC, width: 358, plants: 'medium' })).not.toContain('immed to')
  })
  it('lays the band of the plants under the lines, on their scale', () => {
    const svg = lightPlot(light(30), { id, reader: METRIC, width: 358, plants: 'medium' })
    const [, top = 0, tall = 0] = (/class="light-band"[^>]* y="([\d.]+)"[^>]* height="([\d.]+)"/.exec(svg) ?? []).map(Number)
    const dark = Number(/class="light-dark" d="(?:[ML][\d.]+ [\d.]+){6}L[\d.]+ ([\d.]+)/.exec(svg)?.[1])
    // 30 in the middle is the band's lower edge
    expect(top + tall).toBeCloseTo(dark, 0)
  })
})

describe('the tank on its joists', () => {
  it('is drawn to one scale', () => {
    const at = floorPlaces(plan(), 358)
    expect(at.tank.wide / at.tank.tall).toBeCloseTo(1219 / 457, 6)
    expect((at.far - at.near) / at.tank.tall).toBeCloseTo(3658 / 457, 6)
    expect(((at.joists[1] ?? 0) - (at.joists[0] ?? 0)) / at.tank.tall).toBeCloseTo(406 / 457, 6)
  })
  it('puts the joist that takes most under an end panel, or under the middle of a whole base', () => {
    const panels = floorPlaces(plan(), 358)
    expect(panels.worst).toBeCloseTo(panels.tank.x, 6)
    const whole = floorPlaces(plan({ path: 'full' }), 358)
    expect(whole.worst).toBeCloseTo(whole.tank.x + whole.tank.wide / 2, 6)
  })
  test.prop([
    fc.integer({ min: 600, max: 9000 }),
    fc.integer({ min: 150, max: 1200 }),
    fc.integer({ min: 150, max: 3000 }),
    fc.integer({ min: 150, max: 1200 }),
  ])('keeps the tank between the supports and on the sheet', (spanMm, spacingMm, acrossMm, widthMm) => {
    const alongMm = Math.min(widthMm, spanMm)
    const at = floorPlaces(plan({ spanMm, spacingMm, acrossMm, alongMm, centreMm: Math.round(spanMm / 2) }), 358)
    expect(at.tank.y).toBeGreaterThanOrEqual(at.near - 0.5)
    expect(at.tank.y + at.tank.tall).toBeLessThanOrEqual(at.far + 0.5)
    expect(at.tank.x >= 0 && at.tank.x + at.tank.wide <= at.right).toBe(true)
    expect(at.joists.some((x) => Math.abs(x - at.worst) < 1e-6)).toBe(true)
  })
  it('stands where it was answered, with the worst place in dashes and in words', () => {
    const across = plan({ lie: 'across', centreMm: 229, answeredCentreMm: 1829 })
    const at = floorPlaces(across, 358)
    expect(at.tank.y + at.tank.tall / 2).toBeCloseTo((at.near + at.far) / 2, 0)
    expect(at.elsewhere?.y).toBeCloseTo(at.near, 0)
    const svg = floorPlot(across, { id, reader: METRIC, width: 358 })
    expect(svg).toMatch(/class="floor-elsewhere"[^>]*stroke-dasharray/)
    expect(svg).toContain('>worst here<')
    expect(sayFloor(across, METRIC)).toContain('takes 136 % of its allowance in shear. That is with the tank close to a support')
    // No room beside a short span: the words stand among the keys.
    const flat = floorPlot(plan({ ...across, spanMm: 1200, acrossMm: 3000, answeredCentreMm: 600 }), { id, reader: METRIC, width: 358 })
    expect(flat).toContain('>worst here<')
    expect(floorPlot(plan(), { id, reader: METRIC, width: 358 })).not.toMatch(/worst here|floor-elsewhere/)
  })
  it('never says that it fits', () => {
    const said = sayFloor(plan(), US)
    expect(said).toMatch(/Screening only, never an approval\.$/)
    expect(said).not.toMatch(/fits/)
    expect(sayFloor(plan({ lieStated: false }), US)).toContain('The worst of what nobody has stated is drawn.')
  })
})
