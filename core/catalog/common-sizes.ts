import { L_PER_US_GALLON, MM_PER_INCH } from '../units/factors.ts'

/** A size that the trade calls by a name: "20 long", "90 cm". Dimensions are outside ones. */
export interface CommonSize {
  /** "us-20-long", "cm-90". */
  id: string
  /** As people say it: "20 long", "90 cm". */
  label: string
  system: 'us' | 'metric'
  /** What the label promises, not what the tank holds. */
  labelVolumeL: number
  lengthMm: number
  widthMm: number
  heightMm: number
}

const inches = (value: number) => Math.round(value * MM_PER_INCH)
const us = (gallons: number, form: '' | 'long' | 'high' | 'breeder', length: number, width: number, height: number): CommonSize => ({
  id: ['us', String(gallons).replace('.', '-'), form].filter(Boolean).join('-'),
  label: form === '' ? `${gallons} gal` : `${gallons} ${form}`,
  system: 'us',
  labelVolumeL: Math.round(gallons * L_PER_US_GALLON * 10) / 10,
  lengthMm: inches(length),
  widthMm: inches(width),
  heightMm: inches(height),
})
const cm = (id: string, label: string, length: number, width: number, height: number): CommonSize => ({
  id: `cm-${id}`,
  label,
  system: 'metric',
  labelVolumeL: Math.round((length * width * height) / 1000),
  lengthMm: length * 10,
  widthMm: width * 10,
  heightMm: height * 10,
})

/**
 * The sizes the trade names, smallest first within each system.
 *
 * Source: the trade's common outside dimensions, common practice; makers differ by a centimetre, so a product's own figures come before these.
 */
export const COMMON_SIZES: readonly CommonSize[] = [
  us(5.5, '', 16, 8, 10),
  us(10, '', 20, 10, 12),
  us(15, '', 24, 12, 12),
  us(15, 'high', 20, 10, 18),
  us(20, 'high', 24, 12, 16),
  us(20, 'long', 30, 12, 12),
  us(25, 'high', 24, 12, 20),
  us(29, '', 30, 12, 18),
  us(30, 'breeder', 36, 18, 12),
  us(33, 'long', 48, 13, 12),
  us(37, 'high', 30, 12, 22),
  us(38, '', 36, 12, 20),
  us(40, 'breeder', 36, 18, 16),
  us(40, 'long', 48, 13, 16),
  us(50, 'breeder', 36, 18, 18),
  us(55, '', 48, 13, 21),
  us(60, 'breeder', 48, 24, 12),
  us(65, 'high', 36, 18, 24),
  us(75, '', 48, 18, 21),
  us(90, 'high', 48, 18, 24),
  us(100, '', 72, 18, 18),
  us(120, '', 48, 24, 24),
  us(125, '', 72, 18, 21),
  us(150, 'high', 72, 18, 28),
  us(180, '', 72, 24, 24),
  cm('30', '30 cm', 30, 20, 20),
  cm('30-cube', '30 cm cube', 30, 30, 30),
  cm('40', '40 cm', 40, 25, 25),
  cm('45', '45 cm', 45, 30, 30),
  cm('50', '50 cm', 50, 30, 30),
  cm('60', '60 cm', 60, 30, 36),
  cm('60-low', '60 cm low', 60, 40, 30),
  cm('70', '70 cm', 70, 35, 40),
  cm('75', '75 cm', 75, 40, 45),
  cm('80', '80 cm', 80, 35, 40),
  cm('90', '90 cm', 90, 45, 45),
  cm('100', '100 cm', 100, 40, 50),
  cm('110', '110 cm', 110, 45, 45),
  cm('120', '120 cm', 120, 40, 50),
  cm('120-deep', '120 cm deep', 120, 50, 50),
  cm('150', '150 cm', 150, 50, 60),
  cm('150-deep', '150 cm deep', 150, 60, 60),
]

/** The size with this id; undefined if there is none. @example commonSize('us-20-long')?.lengthMm // 762 */
export function commonSize(id: string): CommonSize | undefined {
  return COMMON_SIZES.find((size) => size.id === id)
}

const plain = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .replace(/\bgallons?\b/, 'gal')

/**
 * The size that the trade calls so, in any spelling of spaces and capitals; undefined if there is none.
 *
 * @example sizeCalled('20  Long')?.id // 'us-20-long'
 */
export const sizeCalled = (text: string): CommonSize | undefined => COMMON_SIZES.find((size) => plain(size.label) === plain(text))
