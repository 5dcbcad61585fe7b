import { expect, it } from 'vitest'
import { figuresOf, told } from './told.ts'
import { findingOf, group, one, reportOf } from './sample-build.ts'

/**
 * Own, by a second program (Hyland & Wexler's pressures, ASHRAE's form): the tank of 75 gallons, 0.5243 m² of water at 25 °C, in rooms of 24 °C at the
 * low-loss end and 18 °C at the high-loss end, gives off 0.0891 to 0.6483 L a day under a lid and 0.8912 to 3.2414 L open: 1.24 and 6.18 mm.
 */
const evaporates = (...changes: Parameters<typeof reportOf>) =>
  told(findingOf('warm_room', ...changes))
    .reason.split('°C. ')
    .at(-1)
const ANY = 'evaporate in a day, by room and season:'

it('is told in a bottle’s measure, and the level by the millimetre', () => {
  expect(evaporates()).toBe(`90 mL to 650 mL ${ANY} the level hardly falls.`)
  expect(evaporates({ lid: null })).toBe(`890 mL to 3,240 mL ${ANY} the level falls by up to 6 mm.`)
  expect(reportOf().figures.evaporationLPerDay).toEqual({ low: 0.09, high: 0.65 })
})

it('is told in litres where it is more than a few bottles', () => {
  // 2.362 × 0.862 m² of water: 3.461 to 12.588 L.
  const big = one('Wendlemere', { lengthMm: 2400, widthMm: 900, heightMm: 750, glassMm: 19, bottomMm: 19, material: 'glass' as const })
  expect(evaporates({ lid: null, tank: big })).toContain('3.5 L to 13 L evaporate')
})

it('names no least where the air of the warmest room is damper than the water gives off', () => {
  // 70 % of 4759 Pa at 32 °C is more than the 3169 Pa of water of 25 °C.
  expect(evaporates({}, { warmestRoomC: 32 })).toBe(`Up to 650 mL ${ANY} the level hardly falls.`)
})

it('of the lid’s material, takes any where nobody states it', () => {
  const lid = one('a lid', { lengthMm: 1210, widthMm: 450 })
  // From the tight lid's least to the mesh's most.
  expect(reportOf({ lid }).figures.evaporationLPerDay).toEqual({ low: 0.09, high: 3.24 })
})

it('leaves its salt behind: 3.2414 L of 237.71 L in a day', () => {
  const found = findingOf('salinity_drift', { lid: null }, { livestock: { ...group('soft-coral-reef'), targetC: 25 } })
  // Sea water of 35 g/kg is taken to give off what fresh water does: 237.71 ÷ (237.71 − 3.2414) is 1.0138.
  expect(figuresOf(found).value).toBe(1.4)
})
