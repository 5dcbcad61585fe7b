import { expect, it } from 'vitest'
import { startupPlan } from '../../../core/startup/startup-plan.ts'
import { METRIC, US } from '../../../core/units/say.ts'
import { actionsIn, amountIn, stepFor, textOf } from './said.ts'
import { sampleSubject } from './sample-subject.ts'

const tank = (panels: { glassMm?: number; bottomMm?: number }) => ({
  name: 'Wendlemere 75',
  quantity: 1,
  spec: { lengthMm: 1219.2, widthMm: 457.2, heightMm: 533.4, ...panels },
})
const stated = { gear: { tank: tank({ glassMm: 10, bottomMm: 10 }) } }

it('fills a tank whose glass is stated to so many litres', () => {
  const step = stepFor(sampleSubject(stated), 'fill')
  expect(amountIn(step, 'Water')).toBe('238 L')
  expect(actionsIn(step)).not.toContain('Count the water')
})

it('marks litres that rest on glass nobody stated, once, and lets the count correct the doses', () => {
  const subject = sampleSubject({ gear: { tank: tank({}) } })
  const step = stepFor(subject, 'fill')
  expect(amountIn(step, 'Water')).toMatch(/^about 238 L, assumed: .*glass thickness, bottom thickness$/)
  expect(actionsIn(step)).toContain('Count the water that goes in')
  expect(actionsIn(step)).toContain('every dose of this sheet goes by your count')
  expect(startupPlan(subject).steps.filter((each) => textOf(each).includes('glass thickness'))).toHaveLength(1)
})

it('marks litres that rest on a usual filling', () => {
  const subject = sampleSubject({ ...stated, conditions: { assumed: ['waterBelowRimMm', 'substrateDepthMm'] } })
  expect(amountIn(stepFor(subject, 'fill'), 'Water')).toBe('about 238 L, assumed: water level below the rim, substrate depth')
})

it('lists the litres as not worked out where nothing of the tank is known', () => {
  const subject = sampleSubject({ gear: { tank: null }, figures: { waterVolumeL: undefined } })
  expect(amountIn(stepFor(subject, 'fill'), 'Water')).toBe('count the buckets')
  expect(startupPlan(subject).notComputed.join(' ')).toContain('Water to fill: the inside of the tank is not known.')
})

it('says what the mixed salt water should measure, by weight and by gravity with its temperature', () => {
  const sea = { livestock: { ...sampleSubject().conditions.livestock, water: 'salt' as const } }
  const step = stepFor(sampleSubject({ conditions: sea }), 'mix-salt')
  // 1023.34306 / 997.04796 kg/m³ at 25 °C: UNESCO Tech. Papers in Marine Science 44 (1983), p. 19.
  expect(amountIn(step, 'Should measure', US)).toBe('35 g in a kilogram, a specific gravity of 1.026 at 77 °F')
  expect(amountIn(step, 'Should measure', { ...METRIC, decimal: ',' })).toBe('35 g in a kilogram, a specific gravity of 1,026 at 25 °C')
})

it.each([
  [1, ['Fix the heater below'], ['failing', 'each end']],
  [2, ['Two are there so that one failing is no disaster', 'one at each end'], []],
  [3, ['More than one is there so that one failing is no disaster', 'spread from end to end'], ['Two are', 'one at each end']],
] as const)('of %d heaters tells how they are placed and why there are so many', (quantity, said, unsaid) => {
  const heaters = [{ name: 'Torvane 150 W', quantity, spec: { powerW: 150, cordMm: 1830 } }]
  const text = textOf(stepFor(sampleSubject({ gear: { heaters } }), 'heater'))
  for (const words of said) expect(text).toContain(words)
  for (const words of unsaid) expect(text).not.toContain(words)
})
