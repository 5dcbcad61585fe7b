import fc from 'fast-check'
import { unit as mathUnit } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { parseQuantity } from '../../../core/units/parse.ts'
import { leastLength, phrase, quantity, stated, type ReaderUnits, type Unit } from '../../../core/units/quantity.ts'
import { displayUnit, METRIC, sayAtLeastLength, sayPhrase, sayQuantity, saySize, US } from '../../../core/units/say.ts'

const read = (text: string, unit: Unit, reader: ReaderUnits = METRIC): number => {
  const result = parseQuantity(text, unit, reader)
  if (!result.ok) throw new Error(result.refusal.words)
  return result.value
}
const refusal = (text: string, unit: Unit, reader: ReaderUnits = METRIC): string => {
  const result = parseQuantity(text, unit, reader)
  return result.ok ? 'none' : result.refusal.code
}

describe('what people type', () => {
  it.each([
    ['20 in', 'mm', 508],
    ['20 1/4 in', 'mm', 514.35],
    ['1/2"', 'mm', 12.7],
    ['50 cm', 'mm', 500],
    ['3 ft', 'mm', 914.4],
    ['3 ft 6 in', 'mm', 1066.8],
    ['2,5 cm', 'mm', 25],
    ['1,234.5 mm', 'mm', 1234.5],
    ['20 lb', 'kg', 9.0718474],
    ['68 °F', 'degC', 20],
    ['-4 F', 'degC', -20],
    ['89.24 ppm', 'dKH', 5],
  ] as Array<[string, Unit, number]>)('reads %s', (text, unit, value) => expect(read(text, unit)).toBeCloseTo(value, 6))

  it('agrees with an independent unit library', () => {
    // mathjs 15 has the exact gallon, inch and pound.
    expect(read('75 gal', 'L')).toBeCloseTo(mathUnit(75, 'gallon').toNumber('litre'), 9)
    expect(read('48 in', 'mm')).toBeCloseTo(mathUnit(48, 'inch').toNumber('mm'), 9)
    expect(read('546 lb', 'kg')).toBeCloseTo(mathUnit(546, 'lbm').toNumber('kg'), 9)
    expect(read('86 °F', 'degC')).toBeCloseTo(mathUnit(86, 'degF').toNumber('degC'), 9)
  })

  it('takes the gallon that the install names', () => {
    // NIST Handbook 44 App. C: 1 imperial gallon = 4.54609 L.
    expect(read('10 gal', 'L', { ...US, gallon: 'imperial' })).toBeCloseTo(45.4609, 9)
    expect(read('10 gal', 'L', US)).toBeCloseTo(37.85411784, 9)
  })

  /** Exact by definition: 4.54609 L over 231 in³. */
  it('keeps the two gallons 1.200949925504855 apart', () => {
    const ratio = read('1 gal', 'L', { ...US, gallon: 'imperial' }) / read('1 gal', 'L', US)
    expect(Math.abs(ratio - 1.200949925504855)).toBeLessThan(1e-12)
  })

  it('reads a bare number in the unit that the field shows', () => {
    expect(read('36', 'mm', US)).toBeCloseTo(914.4, 9)
    expect(read('90', 'mm', METRIC)).toBe(900)
    expect(read('77', 'degC', US)).toBeCloseTo(25, 9)
  })

  it.each([
    ['about 36 inches', '36 inches'],
    ['ca. 90 cm', '90 cm'],
    ['~36', '36'],
  ])('says of "%s" that "%s" alone is taken', (text, taken) => {
    const result = parseQuantity(text, 'mm', US)
    expect(result.ok ? null : result.refusal.words).toBe(`Write the figure without a word before it: ${taken}.`)
    expect(parseQuantity(taken, 'mm', US).ok).toBe(true)
  })

  it('shows an example where no figure stands behind the word either', () => {
    const result = parseQuantity('about 36 litres', 'mm', US)
    expect(result.ok ? null : result.refusal.words).toBe('"about 36 litres" is not a number. Write it like 20 in.')
  })

  it('asks which is meant by 1,234', () => {
    expect(refusal('1,234', 'mm')).toBe('ambiguous')
    expect(refusal('1.234', 'mm', { ...METRIC, decimal: ',' })).toBe('ambiguous')
    expect(read('1.234 cm', 'mm')).toBeCloseTo(12.34, 9)
  })

  it.each([
    ['', 'empty'],
    [`${'1'.repeat(80_000)}.,`, 'too_long'],
    ['about 20', 'not_a_number'],
    ['20 stone', 'unknown_unit'],
    ['1/0', 'not_a_number'],
  ])('refuses "%.40s"', (text, code) => expect(refusal(text, 'mm')).toBe(code))
})

describe('what people read', () => {
  it('tells figures in the reader’s units', () => {
    expect(sayQuantity(quantity(32, 'degC', 1), US)).toBe('89.6 °F')
    expect(sayQuantity(quantity(5, 'K', 1), US)).toBe('9.0 °F')
    expect(sayQuantity(quantity(1219.2, 'mm', 1), US)).toBe('48 in')
    expect(sayQuantity(quantity(900, 'mm', 0), METRIC)).toBe('90 cm')
    expect(sayQuantity(quantity(283.9058838, 'L', 3), US)).toBe('75 gal')
    expect(sayPhrase(phrase`It weighs ${quantity(248, 'kg', 0)}.`, US)).toBe('It weighs 547 lb.')
    expect(saySize([1219.2, 457.2, 533.4], US)).toBe('48 × 18 × 21 in')
  })

  // 62 °F is 16.667 °C, which is 17 °C to the degree, and that is 63 °F.
  it.each([62, 64, 68, 70, 73, 77])('tells %s °F as it was stated', (fahrenheit) => {
    expect(sayQuantity(stated(((fahrenheit - 32) * 5) / 9, 'degC', 0), US)).toBe(`${fahrenheit} °F`)
  })

  // From the definitions in NIST SP 811 and Handbook 44: a pound-force is 4.4482216152605 N, a US fluid ounce 29.5735295625 mL, an imperial one 28.4130625 mL.
  it('tells a push, a bottle, an area and a load on it in US units, and takes them back', () => {
    expect(sayQuantity(quantity(408, 'N', 0), US)).toBe('92 lb of pull')
    expect(sayQuantity(quantity(408, 'N', 0), METRIC)).toBe('42 kg of pull (408 N)')
    expect(sayQuantity(quantity(45, 'N', 0), { ...METRIC, decimal: ',' })).toBe('4,6 kg of pull (45 N)')
    expect(read('10 kg of pull', 'N')).toBeCloseTo(98.0665, 9)
    expect(read('10 lbf', 'N')).toBeCloseTo(44.482216152605, 9)
    expect(read('10 lb of pull', 'N')).toBeCloseTo(44.482216152605, 9)
    expect(sayQuantity(quantity(250, 'mL', 0), US)).toBe('8.5 fl oz (250 mL)')
    expect(sayQuantity(quantity(24, 'mL', 0), US)).toBe('0.81 fl oz (24 mL)')
    // 0.1 fl oz is 2.957 mL: of less the millilitres say all.
    expect(sayQuantity(quantity(3, 'mL', 1), US)).toBe('0.10 fl oz (3.0 mL)')
    expect(sayQuantity(quantity(2.9, 'mL', 1), US)).toBe('2.9 mL')
    expect(sayQuantity(quantity(0.1, 'mL', 1), US)).toBe('0.1 mL')
    expect(sayQuantity(quantity(250, 'mL', 0), { ...US, gallon: 'imperial' })).toBe('8.8 fl oz (250 mL)')
    expect(sayQuantity(quantity(250, 'mL', 0), METRIC)).toBe('250 mL')
    expect(read('8.5 fl oz', 'mL')).toBeCloseTo(8.5 * 29.5735295625, 9)
    expect(read('1 fl oz', 'mL', { ...US, gallon: 'imperial' })).toBeCloseTo(28.4130625, 9)
    // 40 lb/ft² are 1915.2 Pa, 195.3 kg/m² (NIST SP 811: a pound to the square foot is 4.882428 kg/m²).
    expect(sayQuantity(quantity(40 * 4.882428, 'kg/m2', 3), US)).toBe('40.000 lb/ft²')
    expect(sayQuantity(quantity(195.3, 'kg/m2', 0), METRIC)).toBe('195 kg/m²')
    expect(sayQuantity(stated(16 * 0.09290304, 'm2', 2), US)).toBe('16.00 ft²')
  })
  // A bare number in a field is millilitres for every reader: labels print them.
  it('keeps millilitres as the unit of a field', () => expect(displayUnit('mL', US)).toBe('mL'))
  it('tells a whole degree Fahrenheit as it was typed, and a broken one to its tenth', () => {
    expect(sayQuantity(stated(((75 - 32) * 5) / 9, 'degC', 1), US)).toBe('75 °F')
    expect(sayQuantity(stated(24, 'degC', 1), US)).toBe('75.2 °F')
    expect(sayQuantity(stated(15, 'degC', 1), US)).toBe('59 °F')
  })

  it('tells a least length rounded up wherever it stands', () => {
    expect(sayPhrase(phrase`It takes ${leastLength(1373)}.`, US)).toBe('It takes 54.5 in.')
    expect(sayPhrase(phrase`It takes ${leastLength(1373)}.`, METRIC)).toBe('It takes 138 cm.')
  })

  it.each([
    [100, '4 in', '10 cm'], // 3.94 in
    [1697, '67 in', '170 cm'], // 66.8 in
    [102, '4 in', '11 cm'], // 4 in as it is stored
    [105, '4.5 in', '11 cm'],
    [100.4, '4 in', '10 cm'],
    [25, '1 in', '25 mm'],
    [0, '0 in', '0 mm'],
  ])('tells %s mm as a least length rounded up: %s or %s', (mm, us, metric) => {
    expect([sayAtLeastLength(mm, US), sayAtLeastLength(mm, METRIC)]).toEqual([us, metric])
  })

  it('tells a least length that is enough, to the half millimetre of storage, and by no more than a step', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 4000, noNaN: true }), fc.constantFrom(METRIC, US), (mm, reader) => {
        const kept = read(sayAtLeastLength(mm, reader).replace(/(\d),(\d{3})/, '$1$2'), 'mm', reader)
        return kept >= mm - 0.5 - 1e-9 && kept < mm + (reader.system === 'us' ? 12.7 : 10)
      }),
    )
  })

  it('never changes what a round trip through the screen stores, to the digits shown', () => {
    fc.assert(
      fc.property(fc.double({ min: 100, max: 4000, noNaN: true }), fc.constantFrom(METRIC, US), (mm, reader) => {
        const shown = sayQuantity(quantity(mm, 'mm', 1), reader)
        return Math.abs(read(shown.replace(/(\d),(\d{3})/, '$1$2'), 'mm', reader) - mm) <= (reader.system === 'us' ? 1.35 : 0.6)
      }),
    )
  })
})

it('tells a step of whole kelvins to a tenth of a degree Fahrenheit where that is what it is', () => {
  // 2 K are 3.6 °F, and 5 K are 9 °F.
  expect([2, 5].map((kelvins) => sayQuantity(quantity(kelvins, 'K', 0), US))).toEqual(['3.6 °F', '9 °F'])
  expect(sayQuantity(quantity(2, 'K', 0), METRIC)).toBe('2 °C')
})
