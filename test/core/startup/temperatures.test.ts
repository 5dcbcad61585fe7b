import { describe, expect, it } from 'vitest'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { amountIn, stepFor, textOf } from './said.ts'
import { sampleSubject } from './sample-subject.ts'

const STEPS = ['test-protection', 'fill', 'run-in', 'plants', 'daily-readings', 'large-change', 'first-fish'] as const

describe('without a heater', () => {
  const subject = sampleSubject({ gear: { heaters: [] }, conditions: { plants: 'low' } })

  it('asks for the range of the animals, since nothing holds a target', () => {
    expect(amountIn(stepFor(subject, 'run-in'), 'Should read')).toBe('22.0 °C to 28.0 °C: no heater holds it, the room does')
    expect(amountIn(stepFor(subject, 'daily-readings'), 'Keep it at')).toBe('22.0 °C to 28.0 °C, filter always on')
    expect(amountIn(stepFor(subject, 'large-change'), 'New water')).toBe('within 2 °C of what the tank reads')
  })

  it.each(STEPS)('speaks of no setting and no heater in %s', (id) =>
    expect(textOf(stepFor(subject, id))).not.toMatch(/setting|heater (?!holds)|24 °C|25 °C|26 °C/i),
  )
})

it('holds the target to a degree with a heater', () => {
  const step = stepFor(sampleSubject(), 'run-in')
  expect(amountIn(step, 'Should read')).toBe('24 °C to 26 °C')
  expect(sayPhrase(step.stopAndAsk, METRIC)).toContain('outside 24 °C to 26 °C a day after its setting was turned')
  // One band: what should be read is what is asked by.
  expect(sayPhrase(step.stopAndAsk, METRIC)).not.toContain('2 °C')
})

// Exact: 32 °C is 89.6 °F, 22 °C is 71.6 °F.
it('does not round a danger mark past itself in degrees Fahrenheit', () => {
  const step = stepFor(sampleSubject(), 'run-in')
  expect(amountIn(step, 'Never', US)).toBe('at or above 89.6 °F, nor below 71.6 °F')
  expect(sayPhrase(stepFor(sampleSubject(), 'first-month').stopAndAsk, US)).toContain('71.6 °F to 82.4 °F')
})
