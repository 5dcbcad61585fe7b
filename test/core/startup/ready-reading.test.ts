import { describe, expect, it } from 'vitest'
import type { TestKitSpec } from '../../../core/catalog/spec.ts'
import { actionsIn, amountIn, stepFor } from './said.ts'
import { sampleSubject } from './sample-subject.ts'

const subjectWith = (...specs: TestKitSpec[]) =>
  sampleSubject({ gear: { testKits: specs.map((spec, index) => ({ name: `Lockridge ${index}`, quantity: 1, spec })) } })
const readyBy = (...specs: TestKitSpec[]) => amountIn(stepFor(subjectWith(...specs), 'ready'), '24 h later')
const measures = (lowestAmmoniaMgL?: number): TestKitSpec => ({
  measuresAmmonia: true,
  measuresNitrite: true,
  ...(lowestAmmoniaMgL === undefined ? {} : { lowestAmmoniaMgL }),
})

/** Common practice: ready is ammonia and nitrite at 0.25 mg/L or less, a day after a dose, two days running. */
describe('ready', () => {
  it.each([0.25, 0.1, undefined])('is 0.25 mg/L or less by a kit whose lowest mark is %s', (lowest) =>
    expect(readyBy(measures(lowest))).toBe('ammonia 0.25 mg/L or less, and nitrite 0.25 mg/L or less'),
  )

  it.each([0.26, 0.5, 1, 5])('is zero, and not %s mg/L, by a kit that starts there', (lowest) => {
    expect(readyBy(measures(lowest))).toBe('ammonia zero, and nitrite 0.25 mg/L or less')
    expect(amountIn(stepFor(subjectWith(measures(lowest)), 'second-dose'), 'Only when')).toBe('ammonia reads zero')
  })

  it('asks for a finer kit before the first fish where the kit is coarse', () => {
    const subject = subjectWith(measures(1))
    expect(amountIn(stepFor(subject, 'ready'), 'Finer kit')).toBe(
      'before the first fish: yours starts at 1.00 mg/L, ready is told at 0.25 mg/L',
    )
    expect(actionsIn(stepFor(subject, 'first-fish'))).toContain('Test ammonia with the finer kit')
    expect(amountIn(stepFor(subjectWith(measures(0.25)), 'ready'), 'Finer kit')).toBe('(no such amount)')
  })

  it('goes by the finest of several kits', () => expect(readyBy(measures(1), measures(0.2))).toMatch(/^ammonia 0\.25/))

  it('leaves out a kit that does not measure ammonia', () => {
    expect(readyBy({ measuresAmmonia: false, lowestAmmoniaMgL: 0.1 }, measures(1))).toMatch(/^ammonia zero/)
  })
})

it('asks for a kit first where none measures ammonia', () => {
  expect(actionsIn(stepFor(subjectWith({ measuresAmmonia: false }), 'first-ammonia'))).toContain('No kit here measures ammonia')
  expect(actionsIn(stepFor(subjectWith(), 'first-ammonia'))).toContain('There is no test kit in this plan')
})

it('says how many large changes bring the nitrate down to 40 mg/L', () => {
  // Own: ten doses of 2 mg/L are 20 × 4.4268 = 88.5 mg/L of nitrate; a quarter of it is 22; a quarter of 160 is 40, of more it is above.
  expect(amountIn(stepFor(sampleSubject(), 'large-change'), 'How many')).toBe(
    '1 after ten doses (about 89 mg/L of nitrate); 2 above 160 mg/L',
  )
})
