import { describe, expect, it } from 'vitest'
import { METRIC, sayPhrase, sayQuantity, US } from '../../../core/units/say.ts'
import type { Appliance, Gear } from '../../../core/sizing/gear.ts'
import { findingOf as foundIn, one, reportOf } from './sample-build.ts'
import { figuresOf, told } from './told.ts'

/** Without a strip: every cord goes to the wall by itself. */
const findingOf = (check: 'cord_length', changes: Partial<Gear> = {}, room: Parameters<typeof foundIn>[2] = {}) =>
  foundIn(check, { power: [], ...changes }, room)

const heater = (cordMm?: number) => ({ heaters: [one('Torvane', { powerW: 100, ...(cordMm ? { cordMm } : {}) })] })

it('counts the heater’s way up through the water and over the rim', () => {
  // 48 × 18 × 21 in tank: 533 mm of height and 100 mm over the rim are not outside the water.
  expect(findingOf('cord_length', heater(2300)).value?.value).toBe(2300 - 533 - 100)
})

/** Own: exit at 760 + 533 mm, outlet at 300, 600 sideways: hanging 1246.6 + 100, and 300 of slack. */
it('fits with slack, is marginal without, and does not fit when no loop can hang', () => {
  expect(findingOf('cord_length', heater(2400)).verdict).toBe('fits')
  expect(findingOf('cord_length', heater(2100)).verdict).toBe('marginal')
  const short = findingOf('cord_length', heater(1500))
  expect(short.verdict).toBe('does_not_fit')
  expect(short.margin?.value).toBeLessThan(0)
  expect(short.caution).toMatch(/licensed electrician/)
})

it('tells what a loop takes rounded up, and the same in the limit as in the sentence', () => {
  const short = findingOf('cord_length', heater(1500))
  if (short.limit?.kind !== 'at_least') throw new Error('a least length')
  // Own: 1646.6 mm, 64.8 in.
  expect(sayQuantity(short.limit.low, US)).toBe('65 in')
  expect(sayPhrase(short.reason, US)).toContain('takes 65 in, slack included')
})

it('never tells a cord that reaches as shorter than what it needs', () => {
  for (let cordMm = 2270; cordMm <= 2300; cordMm += 1) {
    const { verdict, value, limit } = findingOf('cord_length', heater(cordMm))
    if (verdict !== 'fits' || value === undefined || limit?.kind !== 'at_least') continue
    for (const reader of [US, METRIC])
      expect(parseFloat(sayQuantity(value, reader))).toBeGreaterThanOrEqual(parseFloat(sayQuantity(limit.low, reader)))
  }
})

it('does not guess a cord that nobody measured', () => {
  const unknown = findingOf('cord_length', heater())
  expect(unknown.verdict).toBe('not_known')
  expect(unknown.missing).toContain('cord of Torvane')
  expect(unknown.value).toBeUndefined()
})

it('asks for the stand’s height where the cord is stated and its way down is not', () => {
  const stand = { stand: one('Thornby', { ratedLoadKg: 450 }) }
  // Own: over a stand of 600 to 950 mm a loop takes 1503 to 1838 mm, and 2300 mm of cord leave 1667 outside the water.
  const found = findingOf('cord_length', { ...stand, ...heater(2300), filters: [], lights: [] })
  expect(found).toMatchObject({ verdict: 'not_known', missing: ['height of the stand'] })
  expect(sayPhrase(found.reason, METRIC)).toMatch(/by the height of the stand; nobody has stated that\.$/)
  expect(sayPhrase(found.action?.text ?? [], METRIC)).toMatch(/^Measure and enter the height of the stand\.$/)
  const both = findingOf('cord_length', { ...stand, ...heater(), filters: [], lights: [] })
  expect(both.missing).toEqual(['cord of Torvane', 'height of the stand'])
  expect(sayPhrase(both.reason, METRIC)).toMatch(/nobody has stated how long its cord is/)
})

it('lets the worst cord decide', () => {
  const found = findingOf('cord_length', { lights: [one('Halden', { cordMm: 800, lengthMm: 1150 })] })
  expect(found.verdict).toBe('does_not_fit')
  expect(found.reason[0]).toContain('Halden')
})

it('starts a canister’s cord at the floor of the stand', () => {
  const near = { filters: [one('Pellick', { type: 'canister' as const, cordMm: 1100, ratedFlowLph: 1500 })], heaters: [], lights: [] }
  expect(findingOf('cord_length', near).verdict).toBe('fits')
  const hung = { ...near, filters: [one('Pellick', { type: 'hang_on' as const, cordMm: 1100, ratedFlowLph: 1500 })] }
  expect(findingOf('cord_length', hung).verdict).toBe('does_not_fit')
})

it('says so where the outlet leaves no room for a loop', () => {
  const low = findingOf('cord_length', {}, { outletHeightMm: 60 })
  expect(low.verdict).toBe('does_not_fit')
  expect(sayPhrase(low.reason, METRIC)).toMatch(/no room to hang/)
})

/**
 * By hand. Over the rim, at 760 + 533.4 mm, to an outlet at 300 mm and 600 mm away, the loop hangs to 200 mm: √(600² + 1093.4²) + 100 + 300 is 1647.2 mm with
 * slack, √(600² + 1193.4²) = 1335.8 mm at the shortest. From a canister's head at 350 mm: √(600² + 150²) + 100 + 300 is 1018.5 mm, √(600² + 250²) = 650.0 mm.
 */
describe('the marks of a cord', () => {
  const bare = { heaters: [], filters: [], lights: [], appliances: [] }
  const cords = {
    light: (cordMm: number) => ({ ...bare, lights: [one('Halden', { cordMm, lengthMm: 1150 })] }),
    'hang-on filter': (cordMm: number) => ({ ...bare, filters: [one('Quarrick', { type: 'hang_on' as const, cordMm })] }),
    canister: (cordMm: number) => ({ ...bare, filters: [one('Pellick', { type: 'canister' as const, cordMm })] }),
  }
  const appliance = (kind: Appliance['kind'], cordMm?: number) => ({
    ...bare,
    appliances: [{ kind, name: 'thing', quantity: 1, spec: cordMm === undefined ? {} : { cordMm } }],
  })
  const verdicts = (of: (cordMm: number) => object, marks: readonly number[]) =>
    marks.map((cordMm) => findingOf('cord_length', of(cordMm)).verdict)
  const AROUND = ['fits', 'marginal', 'marginal', 'does_not_fit']

  it.each(['light', 'hang-on filter'] as const)('of a %s, over the rim', (what) =>
    expect(verdicts(cords[what], [1647, 1646, 1336, 1335])).toEqual(AROUND),
  )
  it('of a canister, from its head', () => expect(verdicts(cords.canister, [1018, 1017, 650, 649])).toEqual(AROUND))
  it.each(['air_pump', 'skimmer'] as const)('of a thing that hangs at the rim: %s', (kind) =>
    expect(verdicts((cordMm) => appliance(kind, cordMm), [1647, 1646, 1336, 1335])).toEqual(AROUND),
  )
  it.each(['chiller', 'uv', 'co2', 'battery_backup'] as const)('of a thing that stands beside a canister: %s', (kind) =>
    expect(verdicts((cordMm) => appliance(kind, cordMm), [1018, 1017, 650, 649])).toEqual(AROUND),
  )
  // 533 mm of tank and 100 over its rim, before the 1646.6 and 1336 mm of a cord over the rim.
  it('of an internal filter and of a thing that stands in the tank, which climb 633 mm first', () => {
    const internal = (cordMm: number) => ({ ...bare, filters: [one('Pellick', { type: 'internal' as const, cordMm })] })
    const inside = (cordMm: number) => ({
      ...bare,
      appliances: [{ kind: 'uv' as const, name: 'thing', quantity: 1, spec: { place: 'in_tank' as const, cordMm } }],
    })
    for (const build of [internal, inside]) expect(verdicts(build, [2280, 2279, 1969, 1968])).toEqual(AROUND)
  })
  it('of a pump under water, which climbs 633 mm first', () =>
    expect(verdicts((cordMm) => appliance('circulation_pump', cordMm), [2281, 2280, 2279, 1969, 1968])).toEqual([
      'fits',
      'fits',
      'marginal',
      'marginal',
      'does_not_fit',
    ]))

  it('are told with what there is and what a loop takes', () => {
    expect(told(findingOf('cord_length'))).toEqual({
      verdict: 'fits',
      reason: 'Torvane 100 W has 196.7 cm of cord outside the water; a drip loop to the outlet takes 165 cm, slack included.',
      action: null,
      assumed: [],
      missing: [],
    })
    expect(figuresOf(findingOf('cord_length'))).toMatchObject({ value: 1967, low: 1647, margin: 320 })
    const nearer =
      'Bring the outlets nearer with a power strip hung above the water line, never a second strip behind it, or choose a longer cord.'
    expect(told(findingOf('cord_length', heater(2100)))).toMatchObject({ verdict: 'marginal', action: nearer })
    expect(told(findingOf('cord_length', heater(1500)))).toMatchObject({ verdict: 'does_not_fit', action: nearer })
    expect(findingOf('cord_length').source.tag).toBe('own')
  })

  it('are told to the millimetre where the reserve is less than a step of what is told, else rounded up', () => {
    const least = (cordMm: number) => {
      const { limit } = findingOf('cord_length', cords.light(cordMm))
      return limit?.kind === 'at_least' ? (limit.low.least ?? false) : undefined
    }
    // A reserve of 1659 − 1647.2 = 11.8 mm and of 1660 − 1647.2 = 12.8 mm; one just short counts as reaching, one more does not.
    expect([least(1659), least(1660)]).toEqual([false, true])
    expect([least(1647), least(1646)]).toEqual([false, true])
  })

  it('of cords that nobody measured, take what is sold: 1.2 to 3 m of a light, 1.2 to 2.5 m of an appliance', () => {
    // To a canister's head 1.2 m reach, over the rim they may not.
    expect(findingOf('cord_length', { ...bare, filters: [one('Pellick', { type: 'canister' as const })] })).toMatchObject({
      verdict: 'fits',
      assumed: ['cord of Pellick'],
      value: { value: 1200 },
    })
    expect(findingOf('cord_length', appliance('chiller'))).toMatchObject({ verdict: 'fits', value: { value: 1200 } })
    expect(findingOf('cord_length', appliance('air_pump'))).toMatchObject({ verdict: 'not_known', missing: ['cord of thing'] })
    expect(findingOf('cord_length', { ...bare, lights: [one('Halden', {})] })).toMatchObject({ verdict: 'not_known' })
    expect(told(findingOf('cord_length', heater()))).toMatchObject({
      reason: 'A drip loop at Torvane takes 165 cm of cord outside the water; nobody has stated how long its cord is.',
      action: 'Measure and enter how long the cord is.',
      missing: ['cord of Torvane'],
    })
  })

  it('name the outlet where a default stands for it', () => {
    const assumed = ['outletHeightMm', 'outletDistanceMm'] as const
    const words = ['height of the outlet', 'distance to the outlet']
    for (const changes of [{}, heater()]) expect(findingOf('cord_length', changes, { assumed: [...assumed] }).assumed).toEqual(words)
    expect(findingOf('cord_length', {}, { assumed: [...assumed], outletHeightMm: 60 }).assumed).toEqual(words)
  })

  it('want 100 mm of room below the outlet, and not a millimetre less', () => {
    expect(findingOf('cord_length', {}, { outletHeightMm: 100 }).value).toBeDefined()
    expect(told(findingOf('cord_length', {}, { outletHeightMm: 99 }))).toMatchObject({
      verdict: 'does_not_fit',
      reason: 'The outlet is less than 10 cm above the floor: the cord of Torvane 100 W has no room to hang in a loop below it.',
      action: "Plug into a higher outlet, or have a licensed electrician raise it: a strip's own cord has no room there either.",
    })
  })

  it('are those of the shorter of two cords of one verdict, and of the worse verdict first', () => {
    const lights = [1800, 1700, 1900].map((cordMm) => one(`Halden ${cordMm}`, { cordMm }))
    expect(told(findingOf('cord_length', { ...bare, lights })).reason).toMatch(/^Halden 1700 has 170 cm/)
    // The canister's cord is shorter, but reaches.
    const mixed = { ...bare, filters: cords.canister(1100).filters, lights: cords.light(1500).lights }
    expect(told(findingOf('cord_length', mixed)).reason).toMatch(/^Halden has 150 cm/)
  })

  it('are asked of those alone that may not reach, and told of one that surely does not', () => {
    const canister = [one('Pellick', { type: 'canister' as const })]
    // 1.2 to 2 m reach from a canister's head, 1 to 2 m of a heater may not reach from the rim.
    expect(findingOf('cord_length', { ...bare, ...heater(), filters: canister }).missing).toEqual(['cord of Torvane'])
    const short = findingOf('cord_length', { ...bare, ...heater(), lights: cords.light(800).lights })
    expect(short.verdict).toBe('does_not_fit')
    expect(told(short).reason).toMatch(/^Halden has 80 cm/)
  })

  it('name the stand that nobody measured where one of two cords leaves over the rim', () => {
    const both = { ...bare, filters: cords.canister(1500).filters, lights: cords.light(2000).lights }
    expect(findingOf('cord_length', { ...both, stand: one('Thornby', {}) })).toMatchObject({
      verdict: 'fits',
      assumed: ['height of the stand'],
    })
  })

  it('take the worst stand that nobody measured', () => {
    // Stands of 600 to 950 mm: √(600² + 1283.4²) + 400 is 1816.7 mm at the most, √(600² + 933.4²) + 400 is 1509.6 mm at the least.
    const of = (cordMm: number) => findingOf('cord_length', { ...cords.light(cordMm), stand: one('Thornby', { ratedLoadKg: 450 }) })
    expect(told(of(1817))).toMatchObject({ verdict: 'fits', assumed: ['height of the stand'] })
    expect(told(of(1700))).toEqual({
      verdict: 'not_known',
      reason: 'A drip loop at Halden takes up to 182 cm of cord outside the water, by the height of the stand; nobody has stated that.',
      action: 'Measure and enter the height of the stand.',
      assumed: [],
      missing: ['height of the stand'],
    })
    expect(of(1509).verdict).toBe('marginal')
    // A canister's cord starts under the tank: the stand is nothing to it.
    expect(findingOf('cord_length', { ...cords.canister(1100), stand: one('Thornby', {}) }).assumed).toEqual([])
  })
})

it('draws the loop to the outlet itself where the circuit is protected, and none where that is too low', () => {
  expect(reportOf({}, { circuitProtected: true }).figures.dripLoop).toMatchObject({ outletHeightMm: 300, distanceMm: 600 })
  expect(reportOf({}, { circuitProtected: true }).figures.dripLoop).not.toHaveProperty('to')
  expect(reportOf({}, { outletHeightMm: 60 }).figures.dripLoop).toBeUndefined()
})

/**
 * By hand. The strip hangs beside the rim, half of 1219.2 mm from the tank's middle: a cord over the rim falls 100 mm and rises 100, √(609.6² + 100²) + 100 + 300
 * is 1017.7 mm with slack and √(609.6² + 200²) = 641.6 mm at the shortest. A canister's, from 350 mm to 1293.4, takes √(609.6² + 100²) + 1043.4 + 300 = 1961.1 mm;
 * to the wall 1018.5. The strip's own goes over the rim to the wall: 1647.2 mm, 1335.8 at the shortest.
 */
describe('a strip of the build', () => {
  const bare = { heaters: [], filters: [], lights: [], appliances: [] }
  const strip = (cordMm?: number) => [one('Corbelle', { outlets: 6, ...(cordMm === undefined ? {} : { cordMm }) })]
  const light = (cordMm: number, own?: number) => ({ ...bare, lights: [one('Halden', { cordMm, lengthMm: 1150 })], power: strip(own) })

  it('takes the cords that it hangs nearer to than the wall', () => {
    expect([1018, 1017, 642, 641].map((cordMm) => findingOf('cord_length', light(cordMm, 2500)).verdict)).toEqual([
      'fits',
      'marginal',
      'marginal',
      'does_not_fit',
    ])
    expect(told(findingOf('cord_length', light(900, 2500)))).toEqual({
      verdict: 'marginal',
      reason: 'Halden has 90 cm of cord outside the water; a drip loop to the strip, hung beside the rim, takes 102 cm, slack included.',
      action: 'Hang the strip nearer, beside the tank and above the water line, never a second strip behind it, or choose a longer cord.',
      assumed: ['place of the strip'],
      missing: [],
    })
  })

  it('has a cord of its own to the wall, over the rim', () => {
    expect([1647, 1646, 1336].map((own) => findingOf('cord_length', light(1200, own)).verdict)).toEqual(['fits', 'marginal', 'marginal'])
    expect(told(findingOf('cord_length', light(1200, 1400))).reason).toBe(
      'Corbelle has 140 cm of cord outside the water; a drip loop to the outlet takes 165 cm, slack included.',
    )
    // One that does not reach the wall itself serves nobody.
    expect(told(findingOf('cord_length', light(1200, 1335)))).toMatchObject({ verdict: 'does_not_fit' })
  })

  it('is asked for its cord where no cord reaches the wall without it, and not otherwise', () => {
    expect(told(findingOf('cord_length', light(1200)))).toMatchObject({
      verdict: 'not_known',
      reason: 'A drip loop at Corbelle takes 165 cm of cord outside the water; nobody has stated how long its cord is.',
      missing: ['cord of Corbelle'],
    })
    expect(told(findingOf('cord_length', light(1700)))).toMatchObject({ verdict: 'fits', assumed: [] })
  })

  it('leaves a canister by the floor to the wall, where that is nearer', () => {
    const filters = [one('Pellick', { type: 'canister' as const, cordMm: 1100 })]
    expect(told(findingOf('cord_length', { ...bare, filters, power: strip(2500) }))).toMatchObject({
      verdict: 'fits',
      reason: 'Pellick has 110 cm of cord outside the water; a drip loop to the outlet takes 102 cm, slack included.',
    })
    // The wall is 3 m away: √(3000² + 150²) + 400 is 3403.7 mm, the strip 1961.1.
    const far = { ...bare, filters: [one('Pellick', { type: 'canister' as const, cordMm: 1961 })], power: strip(5000) }
    expect(findingOf('cord_length', far, { outletDistanceMm: 3000 })).toMatchObject({ verdict: 'fits', value: { value: 1961 } })
  })

  it('is the one of several that serves best', () => {
    const power = [one('Short', { cordMm: 600 }), ...strip(2500)]
    expect(findingOf('cord_length', { ...light(1100), power }).verdict).toBe('fits')
  })
})

/**
 * By hand. In a sump of 400 mm a heater's cord climbs 400 + 100 mm and leaves 400 mm above the floor: to an outlet at 300 mm, 600 away, it falls to 200,
 * √(600² + 200²) + 100 + 300 = 1032.46 mm with slack, √(600² + 300²) = 670.8 mm at the shortest.
 */
describe('a heater of a build with a sump', () => {
  const build = (cordMm: number, sump: object) => ({
    lights: [],
    filters: [],
    appliances: [],
    ...heater(cordMm),
    sump: one('Thornby Sump', sump),
  })

  it('is taken to stand there', () => {
    const high = { totalVolumeL: 60, operatingVolumeL: 30, heightMm: 400 }
    expect([1532, 1531, 1171, 1170].map((cordMm) => findingOf('cord_length', build(cordMm, high)).verdict)).toEqual([
      'fits',
      'marginal',
      'marginal',
      'does_not_fit',
    ])
    expect(told(findingOf('cord_length', build(1600, high)))).toMatchObject({
      reason: 'Torvane in the sump has 110 cm of cord outside the water; a drip loop to the outlet takes 104 cm, slack included.',
      assumed: ['place of the heater'],
    })
  })

  it('asks for the height of a sump that nobody measured, where that decides', () => {
    // 300 to 450 mm: 400 to 550 mm climb, and the loop takes √(600² + 250²) + 400 = 1050 mm at the most.
    expect(findingOf('cord_length', build(1601, { totalVolumeL: 60 })).verdict).toBe('fits')
    expect(told(findingOf('cord_length', build(1550, { totalVolumeL: 60 })))).toMatchObject({
      verdict: 'not_known',
      missing: ['height of the sump'],
      action: 'Measure and enter the height of the sump.',
    })
  })
})

/**
 * Against the same build with both heights stated, at each of the four corners: what holds at all of them holds, what does not at all is not known. A sump of
 * 300 to 450 mm and a stand of 600 to 950 are independent. The wall is too far for any of these cords, so that all go to the strip.
 */
describe('a cord from a sump to the strip', () => {
  const bare = { heaters: [], filters: [], lights: [], appliances: [], power: [one('Corbelle', { outlets: 6, cordMm: 9000 })] }
  const sump = (heightMm?: number) => one('Thornby Sump', { totalVolumeL: 60, ...(heightMm === undefined ? {} : { heightMm }) })
  const stand = (heightMm?: number) => one('Thornby', { ratedLoadKg: 450, ...(heightMm === undefined ? {} : { heightMm }) })
  const things = {
    skimmer: (cordMm: number) => ({
      appliances: [{ kind: 'skimmer' as const, name: 'Marl', quantity: 1, spec: { place: 'in_sump' as const, cordMm } }],
    }),
    heater,
    'return pump': (cordMm: number) => ({ filters: [one('Pellick Return', { type: 'return_pump' as const, cordMm })] }),
  }
  const found = (thing: keyof typeof things, cordMm: number, sumpMm?: number, standMm?: number) =>
    findingOf('cord_length', { ...bare, ...things[thing](cordMm), sump: sump(sumpMm), stand: stand(standMm) }, { outletDistanceMm: 5000 })

  it.each(['skimmer', 'heater', 'return pump'] as const)('of a %s holds where it holds at every corner', (thing) => {
    const told = new Set<string>()
    for (let cordMm = 1400; cordMm <= 2900; cordMm += 100) {
      const corners = [300, 450].flatMap((sumpMm) => [600, 950].map((standMm) => found(thing, cordMm, sumpMm, standMm).verdict))
      const [verdict = 'not_known', ...others] = new Set(corners)
      const open = found(thing, cordMm)
      expect(`${cordMm} mm ${open.verdict}`).toBe(`${cordMm} mm ${others.length === 0 ? verdict : 'not_known'}`)
      told.add(open.verdict)
    }
    expect(told).toContain('fits')
    expect(told).toContain('not_known')
  })

  // By hand, the rim at 950 + 533.4 mm: from 300 mm down 100 and 1283.4 up, √(609.6² + 100²) + 1283.4 + 300 is 2201.1 mm, after 400 through the sump and over its
  // rim. What a higher sump saves outside it takes inside; under a stand of 600 mm it is 350 less, 2251.1 in all.
  it('of a skimmer is never taken to fit by the corners that are high or low together', () => {
    expect([2300, 2500, 2600].map((cordMm) => found('skimmer', cordMm).verdict)).toEqual(['not_known', 'not_known', 'not_known'])
    expect(found('skimmer', 2602).verdict).toBe('fits')
    expect(found('skimmer', 2550, 300, 950).verdict).toBe('marginal')
    const open = found('skimmer', 2300)
    expect(open).toMatchObject({ verdict: 'not_known', missing: ['height of the sump', 'height of the stand'] })
    expect(told(open).reason).toMatch(/, by the height of the sump and the height of the stand; nobody has stated that\./)
    expect(told(open).action).toBe('Measure and enter the height of the sump and the height of the stand.')
  })

  // The reserve is one with the lowest and the highest sump: 2700 − 400 − 2201.1 mm, and 2700 − 550 − 2051.1. What is told is the longer loop.
  it('of a skimmer is told with the longest of the loops that leave least', () =>
    expect(found('skimmer', 2700)).toMatchObject({
      verdict: 'fits',
      value: { value: 2300 },
      limit: { low: { value: 2201 } },
      assumed: ['height of the sump', 'height of the stand', 'place of the strip'],
    }))

  // A return pump climbs 300 mm of sump and 100 over its rim, as a heater and a skimmer do, before the 2201.1 mm.
  it.each(['skimmer', 'heater', 'return pump'] as const)('of a %s counts its way up through the sump and over its rim', (thing) =>
    expect([2602, 2600].map((cordMm) => found(thing, cordMm, 300, 950).verdict)).toEqual(['fits', 'marginal']),
  )

  it('keeps both ends of one rim at one height', () => {
    const light = { lights: [one('Halden', { cordMm: 1018, lengthMm: 1150 })] }
    const open = findingOf('cord_length', { ...bare, ...light, stand: stand() }, { outletDistanceMm: 5000 })
    expect(open).toMatchObject({ verdict: 'fits', value: { value: 1018 } })
  })
})

it('never sends to a strip where the outlet is too low for the strip’s own loop', () => {
  const tooLow = { outletHeightMm: 60 }
  const action = "Plug into a higher outlet, or have a licensed electrician raise it: a strip's own cord has no room there either."
  const strip = { power: [one('Corbelle', { outlets: 6, cordMm: 3000 })] }
  for (const changes of [{}, strip])
    expect(told(findingOf('cord_length', changes, tooLow))).toMatchObject({ verdict: 'does_not_fit', action })
})

/**
 * By hand, in the room and with the tank of the marks above. On the wall beside the outlet the strip is reached as the outlet is: 1647.2 mm over the rim, from a
 * sump of 400 mm 1032.5. At the rim 1017.7 mm over the rim, and from the sump √(609.6² + 100²) + 993.4 + 300 = 1911.1; the strip's own to the wall 1647.2.
 */
describe('a strip that is all that protects', () => {
  const bare = { heaters: [], filters: [], lights: [], appliances: [] }
  const strip = (cordMm?: number) => [one('Corbelle', { outlets: 6, protective: true, ...(cordMm === undefined ? {} : { cordMm }) })]
  const lights = (cordMm: number) => [one('Halden', { cordMm, lengthMm: 1150 })]
  const sump = one('Thornby Sump', { totalVolumeL: 60, operatingVolumeL: 30, heightMm: 400 })
  const inSump = { ...bare, ...heater(1600), sump }

  it('takes everything on the wall beside the outlet, where the worst cord does best there', () => {
    // Outside the water 1600 − 500 = 1100 mm: 68 to spare on the wall, 811 short at the rim.
    expect(told(findingOf('cord_length', { ...inSump, power: strip(2500) }))).toEqual({
      verdict: 'fits',
      reason:
        "Torvane in the sump has 110 cm of cord outside the water; a drip loop to the strip takes 104 cm, slack included. Everything goes into the strip, hung on the wall beside the outlet, above the loops' lowest points, off the floor, never under or behind the tank.",
      action: null,
      assumed: ['place of the heater', 'place of the strip'],
      missing: [],
    })
  })

  it('lets no cord go to the wall by itself beside others that go to the rim', () => {
    const mixed = { ...inSump, lights: lights(1200) }
    // The light falls 447 mm short on the wall, the heater 811 at the rim: no one place serves both.
    const found = findingOf('cord_length', { ...mixed, power: strip(2500) })
    expect(told(found)).toMatchObject({ verdict: 'does_not_fit' })
    expect(told(found).reason).toMatch(/^Halden has 120 cm .* to the strip takes 165 cm/)
    // A circuit that is stated to protect lets each go where it does best; one that is assumed to does not.
    expect(findingOf('cord_length', { ...mixed, power: strip(2500) }, { circuitProtected: true }).verdict).toBe('fits')
    const assumed = { circuitProtected: true, assumed: ['circuitProtected' as const] }
    expect(findingOf('cord_length', { ...mixed, power: strip(2500) }, assumed).verdict).toBe('does_not_fit')
  })

  it('hangs at the rim where the worst cord does better there, its own to the wall among them', () => {
    const found = findingOf('cord_length', { ...bare, lights: lights(1200), power: strip(2500) })
    expect(found).toMatchObject({ verdict: 'fits', value: { value: 1200 } })
    expect(told(found).reason).toMatch(
      /to the strip takes 102 cm, slack included\. Everything goes into the strip, hung beside the rim, above the loops' lowest points/,
    )
    expect(reportOf({ ...bare, lights: lights(1200), power: strip(2500) }).figures.dripLoop).toEqual({
      neededMm: 1018,
      lowPointMm: 1293.4 - 100,
      exitHeightMm: 1293.4,
      outletHeightMm: 1293.4,
      distanceMm: (48 * 25.4) / 2,
      to: 'strip',
    })
    // 1500 mm fall 147 short on the wall; the strip's own 1400 fall 247 short at the rim.
    const wall = findingOf('cord_length', { ...bare, lights: lights(1500), power: strip(1400) })
    expect([wall.verdict, told(wall).reason.includes('on the wall')]).toEqual(['marginal', true])
    expect(told(findingOf('cord_length', { ...bare, lights: lights(1200), power: strip() }))).toMatchObject({
      verdict: 'not_known',
      missing: ['cord of Corbelle'],
    })
  })

  it('hangs beside the outlet where both places serve as well', () => {
    // An outlet where the strip would hang at the rim: 1017.7 mm either way.
    const there = { outletHeightMm: 1293.4, outletDistanceMm: 609.6 }
    expect(told(findingOf('cord_length', { ...bare, lights: lights(1200), power: strip(3000) }, there)).reason).toContain('on the wall')
    const low = findingOf('cord_length', { ...bare, lights: lights(1200), power: strip(3000) }, { outletHeightMm: 60 })
    expect(told(low).reason).toMatch(/no room to hang/)
  })

  it('names what might make the other place the better one, and the circuit where that is assumed', () => {
    // On the wall the light falls 147 mm short of slack; at the rim the strip's own cord that nobody stated may be too short, or not.
    expect(findingOf('cord_length', { ...bare, lights: lights(1500), power: strip() })).toMatchObject({
      verdict: 'marginal',
      assumed: ['place of the strip', 'cord of Corbelle'],
    })
    expect(findingOf('cord_length', { ...bare, lights: lights(2500), power: strip() }, { assumed: ['circuitProtected'] })).toMatchObject({
      verdict: 'fits',
      assumed: ['place of the strip', 'protection of the circuit'],
    })
  })
})
