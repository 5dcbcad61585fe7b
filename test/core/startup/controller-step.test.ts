import { expect, it } from 'vitest'
import { startupPlan } from '../../../core/startup/startup-plan.ts'
import { US } from '../../../core/units/say.ts'
import { actionsIn, amountIn, stepFor, textOf } from './said.ts'
import { sampleSubject } from './sample-subject.ts'

const heater = (externalController: boolean | undefined, quantity = 1) => ({
  name: 'Quarrick Twin 100',
  quantity,
  spec: { powerW: 100, ...(externalController === undefined ? {} : { externalController }) },
})
const stepIds = (heaters: Array<ReturnType<typeof heater>>): string[] =>
  startupPlan(sampleSubject({ gear: { heaters } })).steps.map(({ id }) => id)

it('follows the heater’s own step where every heater comes with a controller', () => {
  const ids = stepIds([heater(true)])
  expect(ids[ids.indexOf('heater') + 1]).toBe('set-controller')
})

it.each([
  ['no heater', []],
  ['a heater without one', [heater(false)]],
  ['a heater of which nobody said', [heater(undefined)]],
  ['one heater with and one without', [heater(true), heater(false)]],
])('is left out with %s', (_, heaters) => expect(stepIds(heaters)).not.toContain('set-controller'))

it('says at what to cut off, what the danger is, how to see it work and when to do so again', () => {
  const step = stepFor(sampleSubject({ gear: { heaters: [heater(true)] } }), 'set-controller')
  // Own: the highest temperature that the sample's animals are comfortable at is 28 °C, exactly 82.4 °F; their danger mark is 32 °C, 89.6 °F.
  expect(amountIn(step, 'Cut off at')).toBe('28.0 °C')
  expect(amountIn(step, 'Cut off at', US)).toBe('82.4 °F')
  expect(amountIn(step, 'Danger mark', US)).toContain('89.6 °F')
  expect(actionsIn(step)).toContain('first day of every month')
  // The figure itself: on paper it may stand above or below.
  expect(actionsIn(step)).toContain('set it to cut off at 28.0 °C')
  expect(actionsIn(step)).toContain('Turn it back to 28.0 °C')
  // A dark lamp that stays dark shows nothing.
  expect(actionsIn(step)).toMatch(/lamp must be lit first[^]*Then turn the cut-off below[^]*with the lamp lit first/)
  expect(actionsIn(step)).toContain('unplug all, turn it, plug in again')
  expect(textOf(step)).toContain('Unplug the heater first')
  expect(textOf(step)).toContain('the lamp never lights, or stays on when the cut-off is set below what the thermometer reads')
  expect(step.caution).toMatch(/unplug everything before hands go in/i)
})

it('speaks of each where there are several', () => {
  const step = stepFor(sampleSubject({ gear: { heaters: [heater(true, 2)] } }), 'set-controller')
  expect(amountIn(step, 'How many')).toBe('2 controllers, all set alike')
  expect(step.title).toBe('Set the controllers, and see each switch off')
})

it.each([1, 2])('gives %d heaters no power before the controller, and asks to unplug wherever hands go in', (quantity) => {
  const subject = sampleSubject({ gear: { heaters: [heater(true, quantity)] } })
  const [fix, set] = [stepFor(subject, 'heater'), stepFor(subject, 'set-controller')]
  expect(fix.done).toBe('Done: waited, set, still unplugged')
  expect(textOf(fix).toLowerCase()).not.toContain('plug in heater')
  expect(actionsIn(fix)).toContain('power only through the controller, in the next step')
  expect(actionsIn(fix)).toMatch(/^Unplug the filter and all else before hands go in/)
  expect(actionsIn(set)).toMatch(/^Everything stays unplugged while hands are in/)
  expect(actionsIn(set).indexOf('which is not plugged in yet')).toBeLessThan(actionsIn(set).indexOf('Hands out and dry'))
})

it('leaves a heater without a controller to be plugged in after its wait', () => {
  const step = stepFor(sampleSubject({ gear: { heaters: [heater(false)] } }), 'heater')
  expect(actionsIn(step)).toContain('Hands out and dry: plug in heater and filter.')
})
