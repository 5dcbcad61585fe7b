import { expect, it } from 'vitest'
import { actionsIn, amountIn, stepFor, textOf } from './said.ts'
import { sampleSubject } from './sample-subject.ts'

/** Common practice: what cannot be done any more later is told where it still can. */
it('the sheet under stones is told before the bed lies, and is at hand', () => {
  const subject = sampleSubject()
  expect(textOf(stepFor(subject, 'before-you-start'))).toContain('a thin plastic sheet to go under stones')
  expect(actionsIn(stepFor(subject, 'rinse-substrate'))).toMatch(/^Where heavy stones will stand, lay the thin plastic sheet/)
  expect(actionsIn(stepFor(subject, 'hardscape'))).toContain('firm on the sheet below it')
  expect(actionsIn(stepFor(sampleSubject({ gear: { substrates: [] } }), 'hardscape'))).toContain('Set heavy stones on a thin plastic sheet')
})

it('where a leak would do harm, the leak test comes before the tank is lifted to its place', () => {
  const subject = sampleSubject()
  expect(actionsIn(stepFor(subject, 'lift-tank'))).toMatch(
    /^Would a leak harm this floor or a room below\?[^]*Do the leak test first where it does not[^]*lift it on here/,
  )
  expect(stepFor(subject, 'leak-fill').caution).not.toContain('where water on the floor does no harm')
})

/** Common practice: without food the bacteria dwindle within days. */
it('fish follow the last dose within two days, or the dosing goes on', () => {
  const subject = sampleSubject()
  expect(amountIn(stepFor(subject, 'first-fish'), 'When')).toMatch(
    /^within two days of the last dose; later, dose on as told with the large change/,
  )
  expect(actionsIn(stepFor(subject, 'large-change'))).toContain('Later than that, the bacteria starve: dose to 2 mg/L every second day')
})
