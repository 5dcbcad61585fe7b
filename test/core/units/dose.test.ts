import { describe, expect, it } from 'vitest'
import { parseDose } from '../../../core/units/dose.ts'
import { parseQuantity } from '../../../core/units/parse.ts'
import { METRIC, US } from '../../../core/units/say.ts'

// Own arithmetic from the definitions: 1 US gallon is 3.785411784 L, 1 US fluid ounce 29.5735295625 mL, 1 imperial gallon 4.54609 L.
describe('a dose', () => {
  it.each([
    ['5 mL per 10 gal', 5 / 37.85411784],
    ['5ml/10 gallons', 5 / 37.85411784],
    ['1 fl oz per 50 gal', 29.5735295625 / 189.2705892],
    ['5 mL per 40 L', 0.125],
    ['5 mL to 40 litres', 0.125],
    ['2.5 mL for 1 gal', 2.5 / 3.785411784],
    ['0.13 mL/L', 0.13],
    ['0.13 mL per litre', 0.13],
    ['0.13', 0.13],
  ])('as the label has it, %s', (text, mlPerL) => {
    const read = parseDose(text, US)
    expect(read.ok ? read.value : read.refusal.words).toBeCloseTo(mlPerL, 9)
  })

  it('takes the gallon that the settings name', () => {
    const read = parseDose('5 mL per 10 gal', { ...METRIC, gallon: 'imperial' })
    expect(read.ok && read.value).toBeCloseTo(5 / 45.4609, 9)
  })

  it.each([
    ['5 per 10 gal', 'leaves a unit out'],
    ['5 mL per 10', 'leaves a unit out'],
    ['5 mL per 0 gal', 'treats no water'],
    ['a capful', 'is no dose'],
    ['5 mL per 10 in', 'is not a unit for this'],
    [`5 mL per ${'1'.repeat(80)} gal`, 'too long'],
  ])('is refused in words where it is none: %s', (text, words) => {
    const read = parseDose(text, US)
    expect(read.ok ? '' : read.refusal.words).toContain(words)
  })
})

it('a strength is typed in per cent or as a share', () => {
  expect(parseQuantity('10 %', 'share', US)).toEqual({ ok: true, value: 0.1 })
  expect(parseQuantity('9,5 %', 'share', METRIC)).toEqual({ ok: true, value: 0.095 })
  expect(parseQuantity('0.1', 'share', US)).toEqual({ ok: true, value: 0.1 })
})
