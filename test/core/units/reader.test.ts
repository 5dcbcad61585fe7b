import { fc, it as prop } from '@fast-check/vitest'
import { describe, expect, it } from 'vitest'
import { parseQuantity } from '../../../core/units/parse.ts'
import type { ReaderUnits, Unit } from '../../../core/units/quantity.ts'
import { inSystem, measuredIn } from '../../../core/units/reader.ts'
import { displayUnit, METRIC, sayQuantity, US } from '../../../core/units/say.ts'
import { salinityOfGravity, specificGravity } from '../../../core/units/specific-gravity.ts'
import { anyReader } from '../../support/readers.ts'

const read = (text: string, unit: Unit, reader: ReaderUnits = METRIC): number => {
  const result = parseQuantity(text, unit, reader)
  if (!result.ok) throw new Error(result.refusal.words)
  return result.value
}

describe('a reader', () => {
  it('has the system’s units where nothing else was chosen', () => {
    expect(measuredIn(US)).toEqual({ length: 'in', volume: 'gal', mass: 'lb', temperature: 'F', hardness: 'dKH', salinity: 'sg' })
    expect(measuredIn({ ...US, temperature: 'C', volume: 'L' })).toMatchObject({ length: 'in', temperature: 'C', volume: 'L' })
  })
  it('who changes the system keeps gallon and decimal sign, and nothing that departed from the old one', () => {
    expect(inSystem({ ...US, gallon: 'imperial', decimal: ',', mass: 'kg' }, 'metric')).toEqual({
      system: 'metric',
      gallon: 'imperial',
      decimal: ',',
    })
  })
  it('sees each thing in the unit chosen for it', () => {
    const mixed: ReaderUnits = { ...US, temperature: 'C', mass: 'kg', hardness: 'ppm' }
    expect(sayQuantity({ value: 25, unit: 'degC', digits: 1 }, mixed)).toBe('25.0 °C')
    expect(sayQuantity({ value: 3, unit: 'K', digits: 1 }, mixed)).toBe('3.0 °C')
    expect(sayQuantity({ value: 20, unit: 'kg', digits: 0 }, mixed)).toBe('20 kg')
    expect(sayQuantity({ value: 508, unit: 'mm', digits: 0 }, mixed)).toBe('20 in')
    // 1 German degree is 10 mg/L of CaO, 17.848 mg/L as CaCO3: common conversion of the trade.
    expect(sayQuantity({ value: 5, unit: 'dKH', digits: 1 }, mixed)).toBe('89 ppm')
  })

  /** Units a field may have; whatever the end of its line says, a bare number is in it. */
  const FIELD_UNITS: Unit[] = ['mm', 'm', 'L', 'mL', 'kg', 'g', 'degC', 'K', 'W', 'V', 'A', 'L/h', 'L/day', 'h', 'days', 'mg/L', 'lm', 'percent', 'count', 'dKH', 'g/kg'] // prettier-ignore
  prop.prop([anyReader, fc.constantFrom(...FIELD_UNITS), fc.integer({ min: 1, max: 30 })])(
    'gets for a bare number what the number with the unit shown beside it gets',
    (reader, unit, number) => {
      const text =
        unit === 'g/kg' && displayUnit(unit, reader) === 'SG' ? `1${reader.decimal}0${String(number).padStart(2, '0')}` : `${number}`
      expect(read(text, unit, reader)).toBeCloseTo(read(`${text} ${displayUnit(unit, reader)}`, unit, reader), 9)
    },
  )
})

describe('salinity', () => {
  it('of 35 g/kg is a specific gravity of 1.0264, both waters at 25 °C', () => {
    // 1023.34306 / 997.04796 kg/m³, the check values of UNESCO Tech. Papers in Marine Science 44 (1983), p. 19.
    expect(specificGravity(35)).toBeCloseTo(1023.34306 / 997.04796, 8)
    expect(sayQuantity({ value: 35, unit: 'g/kg', digits: 0 }, US)).toBe('1.0264 SG')
  })
  prop.prop([fc.double({ min: 0, max: 42, noNaN: true })])('comes back from its gravity', (salinity) => {
    expect(Math.abs(salinityOfGravity(specificGravity(salinity)) - salinity)).toBeLessThan(1e-6)
  })
  it('is typed as grams, parts per thousand or gravity', () => {
    expect(read('35 ppt', 'g/kg', US)).toBe(35)
    expect(read('35', 'g/kg', METRIC)).toBe(35)
    expect(read('1.0264', 'g/kg', US)).toBeCloseTo(35, 1)
  })
})

describe('what a keyboard makes of a figure', () => {
  it.each([
    ['20½ in', 'mm', 520.7],
    ['20 ¼"', 'mm', 514.35],
    ['¾ in', 'mm', 19.05],
    ['1 500 L', 'L', 1500],
    ['12\u00a0000 lm', 'lm', 12_000],
    ['10 imp gal', 'L', 45.4609],
    ['10 US gal', 'L', 37.85411784],
    ['2 weeks', 'days', 14],
  ] as Array<[string, Unit, number]>)('%s is read', (text, unit, value) => expect(read(text, unit)).toBeCloseTo(value, 8))
  it('never takes a fraction for a thousand', () => expect(read('20 1/4 in', 'mm')).toBeCloseTo(514.35, 9))
})
