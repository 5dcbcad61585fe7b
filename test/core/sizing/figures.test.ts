import { describe, expect, it } from 'vitest'
import { group, one, reportOf } from './sample-build.ts'

const figuresOf = (...changes: Parameters<typeof reportOf>) => reportOf(...changes).figures

describe('what the tank holds and weighs', () => {
  /** By hand: 48 × 18 × 21 in are 18 144 in³ of 16.387064 mL; inside 1199.2 × 437.2 × 523.4 mm. The rest is the worked tank of 75 gallons, own. */
  it('is told for a fully stated one', () => {
    expect(figuresOf()).toMatchObject({
      outsideVolumeL: 297.33,
      grossVolumeL: 274.41,
      waterVolumeL: 237.71,
      emptyMassKg: 57.28,
      runningMassKg: 335.98,
      substrateMassKg: 41.68,
    })
  })

  /**
   * Own, by a second program: glass of 8 mm on an 8 mm bottom holds 278.91 L to the rim and 241.75 L in use over 42.20 kg of gravel, glass of 15 mm on
   * 20.1 mm 260.77 and 225.21 L and weighs 91.39 kg empty, 356.32 kg running and 376.58 kg to the rim.
   */
  it('is the middle of the volumes and the heavier of the masses where the glass is not stated', () => {
    const tank = one('Wendlemere', { lengthMm: 1219.2, widthMm: 457.2, heightMm: 533.4, material: 'glass' as const })
    expect(figuresOf({ tank })).toMatchObject({
      grossVolumeL: 269.84,
      waterVolumeL: 233.48,
      emptyMassKg: 91.39,
      runningMassKg: 356.32,
      substrateMassKg: 42.2,
      // 28.1 kg of stand on top.
      brimMassKg: 404.68,
    })
  })

  it('counts a stand that states its mass, and no other', () => {
    expect(figuresOf({ stand: null }).brimMassKg).toBe(356.89)
    expect(figuresOf({ stand: one('Thornby', {}) }).brimMassKg).toBe(356.89)
    expect(figuresOf({ stand: one('Thornby', { massKg: 30 }) }).brimMassKg).toBe(386.89)
  })
})

describe('water in a sump', () => {
  // 42 L run in it beside 237.71 L of the tank.
  it('counts in what is dosed, with the tank’s own beside it', () => {
    const sump = one('Under', { totalVolumeL: 66, operatingVolumeL: 42 })
    expect(figuresOf({ sump })).toMatchObject({ waterVolumeL: 279.71, tankWaterL: 237.71 })
    expect(figuresOf()).not.toHaveProperty('tankWaterL')
  })
})

describe('what the filters turn over', () => {
  it('is the middle between loaded and clean media: 1000 and 1400 L/h through 237.71 L', () =>
    expect(figuresOf()).toMatchObject({ flowLph: 1200, turnoverPerHour: 5.05 }))
  it('is left out without a filter, or without its flow', () => {
    for (const filters of [[], [one('Pellick sponge', { type: 'sponge' as const })]]) {
      expect(figuresOf({ filters })).not.toHaveProperty('flowLph')
      expect(figuresOf({ filters })).not.toHaveProperty('turnoverPerHour')
    }
  })
})

describe('what is drawn at once', () => {
  it('is the sum of two heaters of 100 W, 20 W of filter and 30 W of light', () => {
    expect(figuresOf().peakLoadW).toBe(250)
    expect(figuresOf({ tank: null }).peakLoadW).toBe(250)
  })
  it('is left out where a power is not stated or nothing is plugged in', () => {
    expect(figuresOf({ filters: [one('Pellick', {})] })).not.toHaveProperty('peakLoadW')
    expect(figuresOf({ heaters: [], filters: [], lights: [] })).not.toHaveProperty('peakLoadW')
  })
})

describe('light at the substrate', () => {
  it('is a range of whole figures, and its course along the tank beside it', () => {
    const { lightAtBedUmol, lightAlong } = figuresOf()
    expect(lightAtBedUmol).toEqual({ low: Math.round(lightAtBedUmol?.low ?? NaN), high: Math.round(lightAtBedUmol?.high ?? NaN) })
    expect(lightAtBedUmol?.low).toBeLessThan(lightAtBedUmol?.high ?? NaN)
    expect(lightAlong?.points.length).toBeGreaterThan(2)
  })
  it('is left out without a light, or where nothing says how bright it is', () => {
    for (const lights of [[], [one('Halden', { lengthMm: 1150 })]]) {
      expect(figuresOf({ lights })).not.toHaveProperty('lightAtBedUmol')
      expect(figuresOf({ lights })).not.toHaveProperty('lightAlong')
    }
  })
})

it('draws a pump’s curve only where one is known', () => {
  expect(figuresOf()).not.toHaveProperty('pumpCurve')
  const filters = [one('Pellick', { type: 'canister' as const, ratedFlowLph: 1500, maxHeadM: 2, hoseMm: 16 })]
  expect(figuresOf({ filters }).pumpCurve?.filter).toBe('Pellick')
  expect(figuresOf({ filters: [] })).not.toHaveProperty('pumpCurve')
})

describe('a drip loop at the rim', () => {
  // 760 mm of stand and 533.4 of tank; 0.1 m below an outlet 300 mm above the floor: √(600² + 1093.4²) down, 100 up and 300 of slack.
  it('is drawn as it was entered, and wanted in whole millimetres', () =>
    expect(figuresOf().dripLoop).toEqual({
      neededMm: 1647,
      lowPointMm: 200,
      exitHeightMm: 1293.4,
      outletHeightMm: 300,
      distanceMm: 600,
      to: 'wall_strip',
    }))
  it('is left out where the outlet is too low for one', () => expect(figuresOf({}, { outletHeightMm: 99 })).not.toHaveProperty('dripLoop'))
})

it('draws the floor only where somebody measured its joists', () => {
  const measured = { joistWidthMm: 45, joistDepthMm: 195, joistSpacingMm: 400, joistSpanMm: 3600, joistLie: 'across' as const }
  expect(figuresOf({}, measured).floorPlan).toMatchObject({ spanMm: 3600, spacingMm: 400, lie: 'across', massKg: 385 })
  expect(figuresOf()).not.toHaveProperty('floorPlan')
})

it('has no figure of a tank where there is none', () => {
  expect(Object.keys(figuresOf({ tank: null }))).toEqual(['peakLoadW'])
  expect(Object.keys(figuresOf({ tank: null, heaters: [], filters: [], lights: [] }, { livestock: group('cool-stream') }))).toEqual([])
})
