import { expect, it } from 'vitest'
import { assumedOf, conditionWords, startOf } from '../../../core/sizing/words.ts'
import { conditions } from './sample-build.ts'

it('names what a default stands for, of those that were asked, in their order', () => {
  const room = conditions({ assumed: ['floor', 'circuitCurrentA', 'coldestRoomC'] })
  expect(assumedOf(room, ['coldestRoomC', 'warmestRoomC', 'floor'])).toEqual(['coldest room temperature', 'kind of floor'])
  expect(assumedOf(room, ['circuitVoltageV', 'circuitCurrentA'])).toEqual(['circuit current'])
  expect(assumedOf(conditions({ assumed: ['circuitVoltageV', 'energyPriceMinor'] }), ['energyPriceMinor', 'circuitVoltageV'])).toEqual([
    'price of electricity',
    'circuit voltage',
  ])
})

it('begins a sentence with a name', () => {
  expect([startOf('your own heater'), startOf('Torvane'), startOf('')]).toEqual(['Your own heater', 'Torvane', ''])
})

it('names a condition that a default may stand for, and no other', () => {
  expect([conditionWords('floor'), conditionWords('lightHoursPerDay')]).toEqual(['kind of floor', 'hours of light a day'])
  expect(conditionWords('livestock')).toBeUndefined()
})
