import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { systemHeadM, type FlowSystem } from '../../../core/sizing/flow-system.ts'
import { bendThrough, operatingFlowLph, pumpHeadM, type PumpCurve } from '../../../core/sizing/operating-point.ts'
import { frictionFactor } from '../../../core/sizing/pipe-friction.ts'
import { colebrook, operatingFlowByNewton } from '../../reference/pipe-network.ts'

/** H0 2.0 m, Q0 1500 L/h; hose 16 mm, 3 m; fittings 6; water of 8.93e-7 m²/s. */
const parabola: PumpCurve = { maxHeadM: 2, maxFlowLph: 1500, bend: 2 }
const hoses: FlowSystem = { staticHeadM: 0, boreMm: 16, lengthMm: 3000, fittings: 6, mediaLoss: 0, viscosityM2S: 8.93e-7 }
/** A system of media alone: a bore so wide that hoses take nothing. */
const mediaOnly = (mediaLoss: number): FlowSystem => ({ ...hoses, boreMm: 1e4, lengthMm: 0, fittings: 0, mediaLoss })

describe('friction factor', () => {
  /** Own, from Haaland's and Colebrook's equations; tolerance 1e-3 within a formula, 2 % between them. */
  it.each([
    [1e4, 0, 0.03089, 0.03088],
    [1e5, 0, 0.01782, 0.01799],
    [1e5, 1e-4, 0.01827, 0.01851],
    [1e5, 1e-3, 0.02197, 0.02217],
    [1e6, 1e-4, 0.01333, 0.01344],
    [5000, 1e-3, 0.03862, 0.0385],
  ])('at a Reynolds number of %s and a roughness of %s', (reynolds, roughness, haaland, byColebrook) => {
    expect(Math.abs(frictionFactor(reynolds, roughness) / haaland - 1)).toBeLessThan(1e-3)
    expect(Math.abs(colebrook(reynolds, roughness) / byColebrook - 1)).toBeLessThan(1e-3)
    expect(Math.abs(frictionFactor(reynolds, roughness) / byColebrook - 1)).toBeLessThan(0.02)
  })

  /** Published: Moody's chart, smooth pipe at 1e5 (from memory). */
  it('is 0.018 on the chart of a smooth pipe', () => expect(frictionFactor(1e5, 0)).toBeCloseTo(0.018, 3))
  /** Published: Hagen & Poiseuille, 64/Re. */
  it.each([64, 640, 2300])('is 64 over a laminar Reynolds number of %s', (reynolds) =>
    expect(frictionFactor(reynolds, 1e-3)).toBeCloseTo(64 / reynolds, 12),
  )

  it('has no jump from laminar to turbulent', () => {
    for (let reynolds = 2200; reynolds < 4200; reynolds += 1)
      expect(Math.abs(frictionFactor(reynolds + 1, 1e-4) - frictionFactor(reynolds, 1e-4))).toBeLessThan(2e-5)
  })
})

describe('operating point', () => {
  /** Own closed forms: Q0/√(1 + K·Q0²/H0), and the root of K·Q² + H0·Q/Q0 − H0; tolerance 1e-5. */
  it.each([
    [2, 1097.48],
    [1, 963.155],
  ])('of a curve with a bend of %s against 1e7·Q² is %s L/h', (bend, flow) =>
    expect(Math.abs(operatingFlowLph({ ...parabola, bend }, mediaOnly(1e7)) / flow - 1)).toBeLessThan(1e-5),
  )

  /** Own, by another solver; tolerance 1e-3. */
  it.each([
    ['no media', 0, 1020.8],
    ['clean media', 3e6, 962.9],
    ['media loaded to twice that', 6e6, 913.96],
    ['media loaded to four times that', 12e6, 835.16],
  ])('through 3 m of 16 mm hose and %s', (_, mediaLoss, flow) =>
    expect(Math.abs(operatingFlowLph(parabola, { ...hoses, mediaLoss }) / flow - 1)).toBeLessThan(1e-3),
  )
  it('takes the height alone where nothing flows', () => expect(systemHeadM({ ...hoses, staticHeadM: 1.2 }, 0)).toBe(1.2))
  it('takes 1.0737 m without media', () => expect(Math.abs(systemHeadM(hoses, 1020.8) / 1.0737 - 1)).toBeLessThan(1e-3))

  const anySystem = fc.record({
    staticHeadM: fc.double({ min: 0, max: 2, noNaN: true }),
    boreMm: fc.double({ min: 4, max: 60, noNaN: true }),
    lengthMm: fc.double({ min: 100, max: 20_000, noNaN: true }),
    fittings: fc.double({ min: 1, max: 20, noNaN: true }),
    mediaLoss: fc.double({ min: 0, max: 1e9, noNaN: true }),
    viscosityM2S: fc.double({ min: 7e-7, max: 1.6e-6, noNaN: true }),
  })
  const anyPump = fc.record({
    maxHeadM: fc.double({ min: 0.1, max: 15, noNaN: true }),
    maxFlowLph: fc.double({ min: 20, max: 20_000, noNaN: true }),
    bend: fc.double({ min: 0.2, max: 20, noNaN: true }),
  })

  it('agrees with a Newton solver on Colebrook’s friction', () => {
    fc.assert(
      fc.property(anyPump, anySystem, (pump, system) => {
        const ours = operatingFlowLph(pump, system)
        const other = operatingFlowByNewton(pump, system)
        // The two friction formulas differ by up to 2 %, and between laminar and turbulent ours is a straight line of its own.
        if (other.reynolds < 2200 || other.reynolds > 4500) expect(Math.abs(ours - other.flowLph)).toBeLessThan(0.03 * pump.maxFlowLph)
      }),
    )
  })

  it('lies between nothing and the printed flow, where pump and system meet', () => {
    fc.assert(
      fc.property(anyPump, anySystem, (pump, system) => {
        const flow = operatingFlowLph(pump, system)
        expect(flow).toBeGreaterThanOrEqual(0)
        expect(flow).toBeLessThanOrEqual(pump.maxFlowLph)
        if (system.staticHeadM < pump.maxHeadM) {
          const step = pump.maxFlowLph * 1e-9
          expect(pumpHeadM(pump, flow - step)).toBeGreaterThanOrEqual(systemHeadM(system, flow - step) - 1e-9)
          expect(pumpHeadM(pump, flow + step)).toBeLessThanOrEqual(systemHeadM(system, flow + step) + 1e-9)
        } else expect(flow).toBe(0)
      }),
    )
  })

  it('never rises with a longer hose, more fittings, dirtier media or a higher return', () => {
    fc.assert(
      fc.property(anyPump, anySystem, fc.constantFrom('lengthMm', 'fittings', 'mediaLoss', 'staticHeadM'), (pump, system, what) => {
        const worse = { ...system, [what]: system[what as 'lengthMm'] * 1.5 + 0.1 }
        expect(operatingFlowLph(pump, worse)).toBeLessThanOrEqual(operatingFlowLph(pump, system) + 1e-6)
      }),
    )
  })
})

describe('bend of a curve', () => {
  it('goes through the stated point', () => {
    const bend = bendThrough(parabola, { headM: 1.5, flowLph: 750 }) ?? NaN
    expect(bend).toBeCloseTo(2, 12)
    expect(pumpHeadM({ ...parabola, bend }, 750)).toBeCloseTo(1.5, 12)
  })
  it.each([
    [2, 700],
    [2.1, 700],
    [1, 1500],
    [1, 1600],
    [0, 700],
    [-0.1, 700],
    [1, 0],
    [1, -5],
  ])('is none through a point that is on no curve: %s m at %s L/h', (headM, flowLph) =>
    expect(bendThrough(parabola, { headM, flowLph })).toBeUndefined(),
  )
  /** By hand: ln(1 − 0.01)/ln 0.01 is 0.002, and ln 0.00005/ln 0.993 is 1480: neither is a pump. */
  it('is no flatter and no steeper than a pump', () => {
    expect(bendThrough(parabola, { headM: 0.02, flowLph: 15 })).toBe(0.2)
    expect(bendThrough(parabola, { headM: 1.9999, flowLph: 1490 })).toBe(20)
  })
})

/** Nothing but height: 2·(1 − (Q/1500)²) is 1.5 m at 750 L/h, and a straight line is 1 m there. */
describe('a pump that lifts', () => {
  const lift = (staticHeadM: number): FlowSystem => ({ ...mediaOnly(0), staticHeadM })
  it.each([
    [2, 1.5, 750],
    [1, 1, 750],
    [2, 0, 1500],
    [2, 1.999_999, 1500 * Math.sqrt(5e-7)],
  ])('by a curve with a bend of %s over %s m gives %s L/h', (bend, headM, flow) => {
    expect(Math.abs(operatingFlowLph({ ...parabola, bend }, lift(headM)) - flow)).toBeLessThan(1e-3)
  })
  it.each([2, 2.5])('gives nothing over %s m, which is all it has or more', (headM) => {
    expect(operatingFlowLph(parabola, lift(headM))).toBe(0)
  })
  /** By halving what lies between no flow and the greatest, 80 times. */
  function byHalving(pump: PumpCurve, system: FlowSystem): number {
    let [low, high] = [0, pump.maxFlowLph]
    for (let i = 0; i < 80; i++) {
      const middle = (low + high) / 2
      if (pumpHeadM(pump, middle) > systemHeadM(system, middle)) low = middle
      else high = middle
    }
    return low
  }
  /** A curve that holds its head nearly to the end and one that loses it at once, lifting nothing up to nearly all that they have. */
  it.each([0.2, 0.5, 1, 2, 5, 20])('is found as well where it is steep or flat: a bend of %s', (bend) => {
    for (const maxFlowLph of [100, 1500, 15_000])
      for (const staticHeadM of [0, 0.5, 1.99, 1.999_999_9])
        for (const boreMm of [6, 16, 50])
          for (const mediaLoss of [0, 3e6, 1e9]) {
            const [pump, system] = [
              { maxHeadM: 2, maxFlowLph, bend },
              { ...hoses, staticHeadM, boreMm, mediaLoss },
            ]
            expect(Math.abs(operatingFlowLph(pump, system) - byHalving(pump, system))).toBeLessThan(1e-9 * maxFlowLph)
          }
  })
  it('has no head beyond its greatest flow', () => {
    expect([pumpHeadM(parabola, 1500), pumpHeadM(parabola, 2000), pumpHeadM(parabola, 0)]).toEqual([0, 0, 2])
  })
})
