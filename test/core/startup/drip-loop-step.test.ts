import { describe, expect, it } from 'vitest'
import { startupPlan } from '../../../core/startup/startup-plan.ts'
import { METRIC, US } from '../../../core/units/say.ts'
import { actionsIn, amountIn, stepFor } from './said.ts'
import { sizedSubject } from './sample-subject.ts'

const heater = (cordMm?: number) => ({
  heaters: [{ name: 'Torvane', quantity: 1, spec: { powerW: 100, ...(cordMm === undefined ? {} : { cordMm }) } }],
  lights: [],
  filters: [],
  power: [],
})
const loops = (gear: Parameters<typeof sizedSubject>[0]) => stepFor(sizedSubject(gear), 'drip-loops')

describe('the cord of a heater', () => {
  // Own: 183 cm on the label, less 53.3 cm of tank and 10 cm over the rim, is 119.7 cm outside the water; the loop from 129.3 cm takes 164.7 cm.
  it('is too short at 183 cm on the label, since most of it stays in the water', () => {
    const step = loops({ gear: heater(1830) })
    expect(step.title).toBe('A cord is too short for its drip loop')
    expect(amountIn(step, 'Does it reach')).toMatch(/^no\. Torvane has 119\.7 cm of cord outside the water/)
    expect(actionsIn(step)).toContain('Plug nothing in before every cord reaches.')
    expect(actionsIn(step)).toContain('longer cord')
    expect(step.done).toBe('Done: every cord reaches, it hangs below the outlet')
  })

  it('reaches with slack from 240 cm on the label', () => {
    const step = loops({ gear: heater(2400) })
    expect(step.title).toBe('Make a drip loop in every cord')
    expect(amountIn(step, 'Does it reach')).toMatch(/^yes, all do\./)
    expect(actionsIn(step)).not.toContain('Plug nothing in')
  })

  it('reaches without slack at 210 cm', () =>
    expect(amountIn(loops({ gear: heater(2100) }), 'Does it reach')).toMatch(/^just, without slack\./))

  it('is measured first where nobody stated it', () =>
    expect(amountIn(loops({ gear: heater() }), 'Does it reach')).toMatch(/^measure it first\./))
})

it('agrees with the verdict of the report on every length', () => {
  for (let cordMm = 800; cordMm <= 3000; cordMm += 50) {
    const subject = sizedSubject({ gear: heater(cordMm) })
    const verdict = subject.report.findings.find(({ check }) => check === 'cord_length')?.verdict
    const says = amountIn(stepFor(subject, 'drip-loops'), 'Does it reach')
    expect(says.startsWith('no.'), `${cordMm} mm`).toBe(verdict === 'does_not_fit')
    expect(says.startsWith('yes'), `${cordMm} mm`).toBe(verdict === 'fits')
  }
})

describe('an outlet less than 10 cm above the floor', () => {
  const low = { conditions: { outletHeightMm: 60 } }

  it('is raised before a loop is made', () => {
    const step = loops(low)
    expect(step.title).toBe('Raise the outlet, then make the drip loops')
    expect(actionsIn(step)).toMatch(
      /Raise the outlet: plug into a higher one, or have a licensed electrician set one\. A power strip does not mend it/,
    )
    expect(actionsIn(step)).toMatch(/licensed electrician/)
    expect(step.done).toBe('Done: outlet raised, all 4 hang below the outlet')
  })

  it('is not called unknown', () => {
    const { notComputed } = startupPlan(sizedSubject(low))
    expect(notComputed.join(' ')).toContain('the outlet is too low for a loop')
    expect(notComputed.join(' ')).not.toContain('not known')
  })
})

describe('a canister under a high outlet', () => {
  it('has its low point under both ends of its cord, not only under the outlet', () => {
    const step = loops({ conditions: { outletHeightMm: 1100 } })
    expect(amountIn(step, 'Canister')).toBe('lowest point 10 cm (4 in) under where its cord leaves it as well')
    expect(amountIn(step, 'Low point')).toBe('100 cm above the floor, for cords from the rim')
  })

  it('is spoken of where the kind of filter is not stated, and not for one that hangs on the rim', () => {
    const filters = (type?: 'hang_on') => ({
      gear: { filters: [{ name: 'Pellick', quantity: 1, spec: { cordMm: 2500, ...(type === undefined ? {} : { type }) } }] },
    })
    expect(amountIn(loops(filters()), 'Canister')).toContain('under where its cord leaves it')
    expect(amountIn(loops(filters('hang_on')), 'Canister')).toBe('(no such amount)')
  })
})

it.each([METRIC, US])('tells the cord that is needed as one figure, rounded up, and whose outlet it is for', (units) => {
  for (let cordMm = 800; cordMm <= 3000; cordMm += 100) {
    const subject = { ...sizedSubject({ gear: heater(cordMm) }), install: { country: 'US', units } }
    const step = stepFor(subject, 'drip-loops')
    const [figure] = /^[\d.]+ (in|cm) \([\d.]+ (in|cm)\)/.exec(amountIn(step, 'Cord needed', units)) ?? ['none']
    expect(amountIn(step, 'Does it reach', units)).toContain(`takes ${figure},`)
    expect(amountIn(step, 'Reckoned for', units)).toContain('the wall outlet')
  }
})

it('measures the strip’s own cord first where a cord reaches the wall by the strip alone', () => {
  const strip = (cordMm?: number) => ({ power: [{ name: 'Corbelle', quantity: 1, spec: { outlets: 6, ...(cordMm && { cordMm }) } }] })
  expect(amountIn(loops({ gear: { ...heater(1830), ...strip() } }), 'Does it reach')).toMatch(
    /^measure it first\. A drip loop at Corbelle takes/,
  )
  // Own: 119.7 cm outside the water to a strip that wants 101.8 cm; its own cord of 2 m to the wall wants 164.7 cm.
  expect(amountIn(loops({ gear: { ...heater(1830), ...strip(2000) } }), 'Does it reach')).toMatch(/^yes, all do\./)
})

it('says how to measure where the tank is not known', () => {
  const subject = sizedSubject({ gear: { tank: null } })
  expect(amountIn(stepFor(subject, 'drip-loops'), 'Cord needed')).toMatch(/^measure: a string/)
  expect(startupPlan(subject).notComputed.join(' ')).toContain('heights of tank and outlet are not known')
})

it('counts the ways with a strip apart: to the strip, and its own cord to the outlet', () => {
  const step = loops({
    conditions: { circuitProtected: true },
    gear: { heaters: [{ name: 'Torvane', quantity: 2, spec: { powerW: 100, cordMm: 2400, externalController: true } }] },
  })
  expect(amountIn(step, 'With a strip')).toMatch(/From the tank to the strip: .* From the strip to the wall outlet: the strip's own cord/)
  expect(amountIn(step, 'How many')).toContain("the power strip's own, where there is one, and those of the 2 controllers")
})

/** By hand: tank 1219.2 mm long with its rim at 1293.4 mm; outlet at 300 mm, 600 mm away. */
describe('a strip that is all that protects', () => {
  const build = (lightMm: number) => ({
    gear: {
      heaters: [],
      filters: [],
      lights: [{ name: 'Halden', quantity: 3, spec: { cordMm: lightMm } }],
      power: [{ name: 'Corbelle', quantity: 1, spec: { outlets: 6, protective: true, cordMm: 2000 } }],
    },
  })

  it('hangs on the wall beside the outlet, and everything is told to go there', () => {
    // 2000 mm of light: 353 to spare on the wall, where the loop takes 1647. At the rim the strip's own 2000 have the same 353.
    const step = loops(build(2000))
    expect(amountIn(step, 'Reckoned for')).toBe(
      'the strip on the wall beside the outlet, 30 cm above the floor and 60 cm away. Every cord goes into it, none into the wall',
    )
    expect(amountIn(step, 'Cord needed')).toBe('165 cm (65 in) outside the water, from the rim')
    expect(amountIn(step, 'Low point')).toBe('20 cm above the floor, for cords from the rim')
    expect(amountIn(step, "Strip's own cord")).toMatch(/^plugged in beside it/)
    expect(amountIn(step, 'With a strip')).toBe('(no such amount)')
    expect(actionsIn(step)).toContain(
      'splash cover, on the wall beside the outlet, above the lowest point of every loop and out of the drips, never under or behind the tank, never on the floor',
    )
    expect(actionsIn(step)).not.toContain('above the water line')
    expect(step.done).toBe('Done: all 3 hang below the strip')
  })

  it('hangs at the rim, with the low point and the reach of there', () => {
    // √(609.6² + 100²) + 100 + 300 = 1017.7 mm; low point 1293.4 − 100. The strip's own: √(600² + 1093.4²) + 400 = 1647.2 mm, to 200 above the floor.
    const step = loops(build(1200))
    expect(amountIn(step, 'Reckoned for')).toMatch(
      /^the strip beside the rim, 129\.3 cm above the floor and 61 cm from the middle of the tank/,
    )
    expect(amountIn(step, 'Cord needed')).toMatch(/^102 cm \(40\.5 in\)/)
    expect(amountIn(step, 'Low point')).toBe('119.3 cm above the floor, for cords from the rim')
    expect(amountIn(step, "Strip's own cord")).toBe('165 cm (65 in) to the wall outlet, with its lowest point 20 cm above the floor')
    expect(actionsIn(step)).toContain('Measure from the strip down to the lowest point of each cord.')
    expect(step.done).toBe("Done: all 3 hang below the strip, the strip's own below the outlet")
  })
})
