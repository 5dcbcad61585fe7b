import { describe, expect, it } from 'vitest'
import { GENERAL_MARKS, readingMarks, readingWarnings, type ReadingWarning } from '../../../core/startup/reading-marks.ts'
import { startupPlan } from '../../../core/startup/startup-plan.ts'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { actionsIn, stepFor } from './said.ts'
import { sampleSubject } from './sample-subject.ts'

const nothing = { ammoniaMgL: null, nitriteMgL: null, nitrateMgL: null, ph: null, khDegrees: null, temperatureC: null }
const marks = readingMarks(sampleSubject())
const warned = (reading: Partial<Record<keyof typeof nothing, number>>, fishIn = false): Array<ReadingWarning['mark']> =>
  readingWarnings({ ...nothing, ...reading }, marks, fishIn).map(({ mark }) => mark)

/** Marks by common practice; 32 °C and 22 °C are the animals' own of the sample. */
describe('a reading past a mark is told', () => {
  it.each([
    [{ ammoniaMgL: 4.9 }, []],
    [{ ammoniaMgL: 5 }, ['ammonia']],
    [{ nitriteMgL: 5 }, []],
    [{ nitriteMgL: 5.1 }, ['nitrite']],
    [{ ph: 6.5 }, []],
    [{ ph: 6.4 }, ['ph']],
    [{ khDegrees: 3 }, []],
    [{ khDegrees: 2 }, ['kh']],
    [{ temperatureC: 31.9 }, []],
    [{ temperatureC: 32 }, ['too_warm']],
    [{ temperatureC: 22 }, []],
    [{ temperatureC: 21.9 }, ['too_cold']],
    [{ nitrateMgL: 400 }, []],
    [{}, []],
    [{ ammoniaMgL: 6, nitriteMgL: 8, ph: 6.1, temperatureC: 35 }, ['ammonia', 'nitrite', 'ph', 'too_warm']],
  ] as const)('%o: %o', (reading, expected) => expect(warned(reading)).toEqual(expected))

  it('from 0.25 mg/L on with fish in the tank', () => {
    expect(warned({ ammoniaMgL: 0.25, nitriteMgL: 0.25 }, true)).toEqual([])
    expect(warned({ ammoniaMgL: 0.5, nitriteMgL: 0.3 }, true)).toEqual(['ammonia', 'nitrite'])
  })
})

it('says what to do in the words of the step', () => {
  const [warning] = readingWarnings({ ...nothing, ammoniaMgL: 6 }, marks)
  const step = stepFor(sampleSubject(), 'first-ammonia')
  expect(sayPhrase(warning!.todo, METRIC)).toBe('Change half the water and dose nothing.')
  expect(sayPhrase(step.stopAndAsk, METRIC)).toContain('change half the water and dose nothing.')
  const [nitrite] = readingWarnings({ ...nothing, nitriteMgL: 8 }, marks)
  expect(actionsIn(stepFor(sampleSubject(), 'second-dose')).toLowerCase()).toContain(sayPhrase(nitrite!.todo, METRIC).toLowerCase())
})

it('says temperatures in the reader’s units and never tells to unplug a heater that is not there', () => {
  const hot = { ...nothing, temperatureC: 35 }
  const [warning] = readingWarnings(hot, marks)
  expect(sayPhrase(warning!.found, US)).toBe('The water reads 95 °F. Never at or above 89.6 °F.')
  expect(sayPhrase(warning!.todo, US)).toMatch(/^Unplug the heater first\./)
  const [unheated] = readingWarnings(hot, readingMarks(sampleSubject({ gear: { heaters: [] } })))
  expect(sayPhrase(unheated!.todo, US)).not.toContain('heater')
})

it('is frozen into the plan with the animals’ own temperatures', () => {
  expect(startupPlan(sampleSubject()).marks).toEqual({ ...GENERAL_MARKS, lowestC: 22, highestC: 28, dangerC: 32, heated: true })
})

it('tells a temperature as the log does: 60 °F that were typed stay 60 °F', () => {
  const [warning] = readingWarnings({ ...nothing, temperatureC: (60 - 32) / 1.8 }, GENERAL_MARKS)
  expect(sayPhrase(warning!.found, US)).toContain('The water reads 60 °F.')
})
