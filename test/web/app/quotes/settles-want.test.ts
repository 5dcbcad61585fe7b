import { describe, expect, it } from 'vitest'
import type { Product } from '../../../../core/catalog/product.ts'
import { workBuild } from '../../../../core/quote/worked-build.ts'
import { METRIC } from '../../../../core/units/say.ts'
import { candidateOf } from '../../../../web/app/quotes/candidates.ts'
import { meetsWant, sayWant, type Want } from '../../../../web/app/quotes/meets-want.ts'
import { buy, productOf, sampleInputs, sampleTank } from '../../../core/quote/sample-inputs.ts'

const size = { topLengthMm: 900, topWidthMm: 450, ratedLoadKg: 400 }
const frame = productOf('stand', 'Open frame', { ...size, top: 'perimeter' })
const board = productOf('stand', 'Full board', { ...size, top: 'full' })
const unstated = productOf('stand', 'Nobody says', size)
const small = productOf('stand', 'Short board', { ...size, topLengthMm: 600, top: 'full' })
const none = { products: [], prices: [] }

/** The finding about flat glass on an open frame, as the desk opens the slot from it. */
function asked(): { want: Want; tries: (product: Product) => boolean } {
  const inputs = sampleInputs([sampleTank, frame])
  const build = workBuild(inputs, 0)
  const finding = build.report.findings.find(({ check }) => check === 'stand_bedding')
  if (!finding?.action?.want) throw new Error('flat glass on a frame asks for another stand')
  const want = { ...finding.action.want, check: finding.check }
  const replaces = [buy(frame).id]
  const tries = (product: Product) =>
    candidateOf(product, { inputs, build, slot: 'carry_tank', quantity: 1, replaces, want, fetched: none }).settles
  return { want, tries }
}

describe('a stand for a flat bottom', () => {
  it('has a full board: a frame is left out, and one of which nobody says it comes last', () => {
    const { want } = asked()
    expect([frame, board, unstated].map((product) => meetsWant(product, want))).toEqual(['no', 'yes', 'unstated'])
    expect(sayWant(want, METRIC)).toBe('a full board on top')
  })
  it('settles it though a mat is asked for next, for that is another slot', () => {
    expect(asked().tries(board)).toBe(true)
  })
  it('does not where the finding stays, or where another check of the stand begins to fail', () => {
    const { tries } = asked()
    expect(tries(frame)).toBe(false)
    expect(tries(small)).toBe(false)
  })
})

it('two heaters that would boil the tank when they stick settle nothing', () => {
  const heater = (powerW: number) => productOf('heater', `Heater ${powerW}`, { powerW })
  const inputs = sampleInputs([sampleTank, heater(1000)])
  const build = workBuild(inputs, 0)
  const want: Want = { slot: 'heat', quantity: 2, minimum: {}, check: 'heater_stuck' }
  const tries = (powerW: number) =>
    candidateOf(heater(powerW), { inputs, build, slot: 'heat', quantity: 2, replaces: [buy(heater(1000)).id], want, fetched: none }).settles
  expect(build.report.findings.find(({ check }) => check === 'heater_stuck')?.verdict).toBe('does_not_fit')
  expect(tries(800)).toBe(false)
  expect(tries(100)).toBe(true)
  // Too weak for the coldest room: the check that asked is rid of, another one of the slot is not.
  expect(tries(5)).toBe(false)
})
