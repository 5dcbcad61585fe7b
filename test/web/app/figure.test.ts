import { fc, it as prop } from '@fast-check/vitest'
import { describe, expect, it } from 'vitest'
import { METRIC, US } from '../../../core/units/say.ts'
import { fieldUnit, readFigure, readMoney, spellFigure, spellMoney, type FigureLimits } from '../../../web/app/parts/figure.ts'

const length: FigureLimits = { label: 'Length', unit: 'mm', min: 100, max: 4000 }
const glass: FigureLimits = { label: 'Side thickness', unit: 'mm', min: 2, max: 40 }

describe('a figure as it is typed', () => {
  // 1 in = 25.4 mm exactly (international inch, 1959).
  it.each([
    ['20 in', 508],
    ['20', 200],
    ['50 cm', 500],
    ['508 mm', 508],
    ['20 1/4 in', 514.35],
  ])('%s is %d mm for a metric reader', (text, mm) => {
    expect(readFigure(text, length, METRIC)).toEqual({ value: mm, fault: null })
  })
  it('takes a bare number in the unit that stands at the end of the line', () => {
    expect(readFigure('20', length, US).value).toBe(508)
    expect(fieldUnit(length, US)).toBe('in')
    expect(fieldUnit(glass, METRIC)).toBe('mm')
    expect(readFigure('6', glass, METRIC).value).toBe(6)
  })
  it('is nothing where nothing was typed', () => {
    expect(readFigure('  ', length, US)).toEqual({ value: null, fault: null })
  })
  it('says what is wrong with the limit and the fix', () => {
    expect(readFigure('5 mm', length, METRIC).fault).toBe(
      'Length is 0.5 cm. The least is 10 cm. Was it another unit? Write it behind the number.',
    )
    expect(readFigure('400 in', length, US).fault).toContain('The most is 157 in')
    expect(readFigure('wide', length, US).fault).toContain('is not a number')
    expect(readFigure('1,234', length, US).fault).toContain('two ways')
    expect(readFigure('2.5', { label: 'Outlets', unit: 'count', whole: true }, US).fault).toBe(
      'Outlets is a whole number, without decimals.',
    )
  })
  it('has no conversion where the core has no unit, and takes the unit’s text behind the number', () => {
    const dose: FigureLimits = { label: 'Dose', unitText: 'mL/L', min: 0.001, max: 5 }
    expect(readFigure('0.1 mL/L', dose, US)).toEqual({ value: 0.1, fault: null })
    expect(spellFigure(0.1, dose, US)).toBe('0.1')
  })
  it('is spelled in the reader’s unit', () => {
    expect(spellFigure(914.4, length, US)).toBe('36')
    expect(spellFigure(914.4, length, METRIC)).toBe('91.44')
    expect(spellFigure(25, { label: 'Water', unit: 'degC' }, US)).toBe('77')
    expect(spellFigure(455, length, { ...METRIC, decimal: ',' })).toBe('45,5')
    expect(spellFigure(null, length, US)).toBe('')
  })
  prop.prop([fc.double({ min: 100, max: 4000, noNaN: true }), fc.constantFrom(METRIC, US)])(
    'reads back what it spells, to four figures',
    (mm, reader) => {
      const read = readFigure(spellFigure(mm, { ...length, min: 1, max: 9999 }, reader), { ...length, min: 1, max: 9999 }, reader)
      expect(Math.abs((read.value ?? NaN) - mm) / mm).toBeLessThan(5e-4)
    },
  )
})

describe('an amount as it is typed', () => {
  it('is minor units', () => {
    expect(readMoney('159', 'USD', 'Price', 1)).toEqual({ value: 15900, fault: null })
    expect(readMoney('$1,107.03', 'USD', 'Price', 1)).toEqual({ value: 110703, fault: null })
    expect(readMoney('159', 'JPY', 'Price', 1)).toEqual({ value: 159, fault: null })
  })
  it('refuses a price of 0 and a price with a letter in it', () => {
    expect(readMoney('0', 'USD', 'Price', 1).fault).toBe('Price is $0.00. The least is $0.01.')
    expect(readMoney('15g', 'USD', 'Price', 1).fault).toContain('not a price')
  })
  prop.prop([fc.integer({ min: 0, max: 1_000_000_000 }), fc.constantFrom('USD', 'JPY', 'KWD')])(
    'reads back what it spells',
    (minor, currency) => {
      expect(readMoney(spellMoney(minor, currency), currency, 'Price').value).toBe(minor)
    },
  )
})
