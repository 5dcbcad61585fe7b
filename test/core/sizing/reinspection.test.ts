import { describe, expect, it } from 'vitest'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { reinspection } from '../../../core/sizing/reinspection.ts'
import { conditions, gear, group } from './sample-build.ts'

const subject = { gear: gear(), conditions: conditions({ assumed: ['otherLoadW'] }) }
/** The checks that are made again after an answer about the room. */
const movedBy = (changes: Partial<Conditions>) => {
  const moved = reinspection(subject)?.({ ...subject, conditions: { ...subject.conditions, ...changes } })
  return moved && [...moved.keys()]
}

/** Own: what each check asks for, by what it says of itself. */
describe('what is inspected again', () => {
  it('is nothing where nothing changed', () => expect(movedBy({})).toEqual([]))
  it('is the load on the circuit alone where more runs on it', () =>
    expect(movedBy({ otherLoadW: 1500, assumed: [] })).toEqual(['electrical_load']))
  it('is no check where only the price of energy changed', () => expect(movedBy({ energyPriceMinor: 30 })).toEqual([]))
  it('is what hangs on the cold alone in a colder room, and neither mass nor light', () => {
    const moved = movedBy({ coldestRoomC: 12 })
    expect(moved).toEqual(expect.arrayContaining(['heater_holds', 'heater_spare']))
    for (const check of ['stand_load', 'floor_load', 'tipping', 'light_level', 'electrical_load'] as const)
      expect(moved).not.toContain(check)
  })
  it('is both mass and heat where the tank is filled another way', () =>
    expect(movedBy({ waterBelowRimMm: 80 })).toEqual(expect.arrayContaining(['heater_holds', 'stand_load'])))
  it('is none of a tank that would hold no water, and of no build without one', () => {
    expect(movedBy({ waterBelowRimMm: 600 })).toBeNull()
    expect(reinspection({ ...subject, gear: gear({ tank: null }) })).toBeUndefined()
  })
  it('tells of the other answer what a report on it would', () => {
    const moved = reinspection(subject)?.({ ...subject, conditions: { ...subject.conditions, livestock: group('goldfish-fancy') } })
    // Fancy goldfish bear 12 °C, and the room keeps the water above that.
    expect(moved?.get('heater_holds')).toMatchObject({ verdict: 'fits', value: { unit: 'degC' } })
  })
})
