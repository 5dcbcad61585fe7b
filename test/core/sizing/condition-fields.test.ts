import { expect, it } from 'vitest'
import { CONDITION_FIELDS } from '../../../core/sizing/condition-fields.ts'

/** A field that a person may not know the meaning of says it in a line. */
const EXPLAINED = [
  'coldestRoomC',
  'warmestRoomC',
  'floor',
  'joistSpanMm',
  'joistSpacingMm',
  'floorUse',
  'altitudeM',
  'outletDistanceMm',
  'circuitProtected',
  'siphonBelowMm',
  'pipeVolumeL',
  'tapC',
  'waterChangePercent',
  'tapGhDegrees',
  'tapKhDegrees',
  'targetC',
  'lowestC',
  'dangerC',
]

it('explains the figures of a room that somebody has to measure or to look up', () => {
  const explained = CONDITION_FIELDS.filter(({ help }) => /^[A-Z].*\.$/.test(help)).map(({ key }) => key)
  expect(explained).toEqual(EXPLAINED)
})

it('asks for the price of a kilowatt hour in minor units, whose currency the install has', () => {
  expect(CONDITION_FIELDS.find(({ key }) => key === 'energyPriceMinor')).toMatchObject({ unitText: 'minor units' })
})

it('lets every choice be made, each by a label of its own', () => {
  const choices = CONDITION_FIELDS.flatMap((field) =>
    field.type === 'choice' ? [[field.key, field.options.map(({ label }) => label)]] : [],
  )
  expect(Object.fromEntries(choices)).toEqual({
    floor: ['Slab on the ground', 'Timber, upper storey', 'Concrete, upper storey', 'Not known'],
    joistLie: ['Back against the wall that carries them', 'Across them, elsewhere', 'Along them'],
    floorUse: ['Bedroom', 'Not a bedroom'],
    plants: ['None', 'Low light', 'Medium light', 'High light'],
    disinfectant: ['Chlorine', 'Chloramine', 'None (well)', 'Not known'],
  })
})

it('takes a cold cellar, land below the sea and a small circuit, and nothing a home has not', () => {
  const limits = Object.fromEntries(CONDITION_FIELDS.flatMap((field) => ('min' in field ? [[field.key, [field.min, field.max]]] : [])))
  expect(limits).toMatchObject({
    coldestRoomC: [-5, 35],
    // The lowest shore that people live on is 430 m below the sea, the highest town 5100 m above it (from memory).
    altitudeM: [-400, 5000],
    circuitVoltageV: [90, 260],
    circuitCurrentA: [1, 63],
    waterChangePercent: [1, 100],
  })
})
