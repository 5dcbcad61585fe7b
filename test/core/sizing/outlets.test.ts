import { describe, expect, it } from 'vitest'
import type { PowerSpec } from '../../../core/catalog/spec.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { outletProtection } from '../../../core/sizing/outlet-protection.ts'
import { applianceCount, outlets } from '../../../core/sizing/outlets.ts'
import { toldFinding } from '../../../core/sizing/told-report.ts'
import { actionOf, reasonOf } from './round-tank.ts'
import { conditions, gear, one } from './sample-build.ts'

/** Two heaters, a filter, a light and two air pumps: six things to plug in. */
const subject = (power: Array<{ spec: PowerSpec; quantity?: number; name?: string }>, room: Partial<Conditions> = {}) => ({
  gear: gear({
    power: power.map(({ spec, quantity, name = 'strip of Corbelle' }) => one(name, spec, quantity)),
    appliances: [{ kind: 'air_pump' as const, ...one('Pellick air', {}, 2) }],
  }),
  conditions: conditions(room),
})

it('counts what is plugged in', () => expect(applianceCount(subject([]))).toBe(6))

describe('outlets for six things', () => {
  it.each([
    [5, 'does_not_fit', -1],
    [6, 'fits', 0],
    [8, 'fits', 2],
  ])('on a strip of %s: %s', (count, verdict, margin) => {
    const found = outlets(subject([{ spec: { outlets: count } }]))!
    expect(toldFinding(found)).toMatchObject({
      verdict,
      value: { value: count, unit: 'count' },
      limit: { kind: 'at_least', low: { value: 6 } },
      margin: { value: margin },
      source: { tag: 'common_practice' },
      missing: [],
    })
    expect(toldFinding(found).caution).toMatch(/Water and mains electricity can kill/)
    expect(reasonOf(found)).toBe(`6 appliances need an outlet each; the strip has ${count}.`)
    expect(actionOf(found)).toBe(verdict === 'fits' ? null : 'Choose a strip with at least 6 outlets. Never put a second strip behind it.')
    if (found.action) expect(found.action.want).toEqual({ slot: 'protect_circuit', quantity: 1, minimum: { outlets: 6 } })
  })

  it('add up over strips', () => {
    const two = outlets(subject([{ spec: { outlets: 2 }, quantity: 2 }, { spec: { outlets: 1 } }]))!
    expect([two.verdict, reasonOf(two)]).toEqual(['does_not_fit', '6 appliances need an outlet each; the strips have 5.'])
    expect(reasonOf(outlets(subject([{ spec: { outlets: 3 }, quantity: 2 }]))!)).toMatch(/the strips have 6\.$/)
  })

  it('are not known of a strip that states none, unless another has enough', () => {
    const found = outlets(subject([{ spec: { outlets: 5 } }, { spec: {} }]))!
    expect(found).toMatchObject({ verdict: 'not_known', missing: ['outlets of the strip'], limit: { low: { value: 6 } } })
    expect(reasonOf(found)).toBe("6 appliances need an outlet each; the strip's number is not stated.")
    expect(actionOf(found)).toBe("Enter the strip's number of outlets.")
    expect(outlets(subject([{ spec: { outlets: 6 } }, { spec: {} }]))?.verdict).toBe('fits')
  })

  it('are those alone of the strips that protect, where nothing else does', () => {
    const strips = [{ spec: { outlets: 4, protective: true } }, { spec: { outlets: 8 } }]
    expect(outlets(subject(strips))).toMatchObject({ verdict: 'does_not_fit', value: { value: 4 } })
    expect(reasonOf(outlets(subject(strips))!)).toMatch(/the strip has 4\.$/)
    expect(outlets(subject(strips, { circuitProtected: true }))).toMatchObject({ verdict: 'fits', value: { value: 12 } })
  })

  it('rest on the circuit where it is only assumed, and some strips do not protect', () => {
    const mixed = [{ spec: { outlets: 8, protective: true } }, { spec: { outlets: 8 } }]
    const assumedOn = (strips: Parameters<typeof subject>[0], assumed: Conditions['assumed']) =>
      outlets(subject(strips, { circuitProtected: false, assumed }))?.assumed
    expect(assumedOn(mixed, ['circuitProtected'])).toEqual(['protection of the circuit'])
    expect(assumedOn(mixed, [])).toEqual([])
    expect(assumedOn(mixed.slice(0, 1), ['circuitProtected'])).toEqual([])
    expect(assumedOn(mixed.slice(1), ['circuitProtected'])).toEqual([])
  })

  it('are not known of a wall', () => {
    const found = outlets(subject([]))!
    expect(found).toMatchObject({ verdict: 'not_known', missing: ['outlets within reach'] })
    expect(reasonOf(found)).toBe('6 appliances need an outlet each; nobody has stated how many the wall has.')
    expect(actionOf(found)).toBe('Count the outlets within reach, or add a strip with at least 6 outlets.')
    expect(found.action?.want).toEqual({ slot: 'protect_circuit', quantity: 1, minimum: { outlets: 6 } })
  })
})

describe('what switches off when current leaks', () => {
  const TRIPS = / It may trip by night and leave the tank cold: add a temperature alarm/
  const want = { slot: 'protect_circuit', quantity: 1, minimum: {} }

  it('is a strip of its own, by name', () => {
    const found = outletProtection(subject([{ spec: { protective: false } }, { spec: { protective: true } }]))!
    expect(toldFinding(found)).toMatchObject({ verdict: 'fits', action: null, source: { tag: 'common_practice' } })
    expect(reasonOf(found)).toMatch(
      /^Strip of Corbelle switches off when current leaks\. Everything in or over the water goes through it: see Cords\./,
    )
    expect(reasonOf(found)).toMatch(TRIPS)
  })

  it('is the circuit, where that is stated', () => {
    const found = outletProtection(subject([{ spec: { protective: false } }], { circuitProtected: true }))!
    expect([found.verdict, found.action]).toEqual(['fits', null])
    expect(reasonOf(found)).toMatch(/^The circuit already has a protective device\. Press its test button before the first fill\./)
    expect(reasonOf(found)).toMatch(TRIPS)
  })

  it('is the circuit where both are: then not everything has to go through the strip', () => {
    const both = (room: Partial<Conditions>) => reasonOf(outletProtection(subject([{ spec: { protective: true } }], room))!)
    expect(both({ circuitProtected: true })).toMatch(/^The circuit already has a protective device\./)
    expect(both({ circuitProtected: true, assumed: ['circuitProtected'] })).toMatch(/^Strip of Corbelle switches off/)
  })

  it('is asked of the strip, then of the circuit', () => {
    const strip = outletProtection(subject([{ spec: { protective: false } }, { spec: {}, name: 'Old strip' }]))!
    expect(strip).toMatchObject({ verdict: 'not_known', missing: ['protective device of the strip'], action: { want } })
    expect(reasonOf(strip)).toBe('Nobody has stated whether Old strip has a protective device.')
    const assumed = { circuitProtected: true, assumed: ['circuitProtected' as const] }
    const circuit = outletProtection(subject([{ spec: { protective: false } }], assumed))!
    expect(circuit).toMatchObject({ verdict: 'not_known', missing: ['protection of the circuit'], action: { want } })
    expect(reasonOf(circuit)).toBe('Nobody has stated whether the circuit has a protective device, and no strip of this build has one.')
    expect(outletProtection(subject([{ spec: {} }], assumed))?.missing).toEqual(['protective device of the strip'])
  })

  it('is missed where neither does', () => {
    const found = outletProtection(subject([{ spec: { protective: false } }]))!
    expect(found).toMatchObject({ verdict: 'does_not_fit', missing: [], action: { want } })
    expect(reasonOf(found)).toBe('Neither the circuit nor a strip switches off when current leaks through water or a hand.')
    expect(actionOf(found)).toMatch(/^Add a strip or adapter with a protective device/)
    expect(toldFinding(found).caution).toMatch(/Water and mains electricity can kill/)
  })

  it('is no matter where nothing is plugged in', () => {
    const nothing = { gear: gear({ heaters: [], filters: [], lights: [] }), conditions: conditions() }
    expect([outletProtection(nothing), outlets(nothing)]).toEqual([null, null])
  })
})
