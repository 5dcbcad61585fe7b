import { L_PER_US_GALLON } from '../units/factors.ts'
import { COMMON_OUTSIDES } from './common-outsides.ts'

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

const US: ReadonlyArray<readonly [gallons: number, form: '' | 'long' | 'high' | 'breeder']> = [
  [5.5, ''],
  [10, ''],
  [15, ''],
  [15, 'high'],
  [20, 'high'],
  [20, 'long'],
  [25, 'high'],
  [29, ''],
  [30, 'breeder'],
  [33, 'long'],
  [37, 'high'],
  [38, ''],
  [40, 'breeder'],
  [40, 'long'],
  [50, 'breeder'],
  [55, ''],
  [60, 'breeder'],
  [65, 'high'],
  [75, ''],
  [90, 'high'],
  [100, ''],
  [120, ''],
  [125, ''],
  [150, 'high'],
  [180, ''],
]
const METRIC: ReadonlyArray<readonly [id: string, label: string]> = [
  ['30', '30 cm'],
  ['30-cube', '30 cm cube'],
  ['40', '40 cm'],
  ['45', '45 cm'],
  ['50', '50 cm'],
  ['60', '60 cm'],
  ['60-low', '60 cm low'],
  ['70', '70 cm'],
  ['75', '75 cm'],
  ['80', '80 cm'],
  ['90', '90 cm'],
  ['100', '100 cm'],
  ['110', '110 cm'],
  ['120', '120 cm'],
  ['120-deep', '120 cm deep'],
  ['150', '150 cm'],
  ['150-deep', '150 cm deep'],
]

const MM3_PER_LITRE = 1e6

/** The same place in the list of sides; a name without one is a mistake in the lists. */
function sidesAt(index: number): Pick<CommonSize, 'lengthMm' | 'widthMm' | 'heightMm'> {
  const [lengthMm, widthMm, heightMm] = COMMON_OUTSIDES[index] ?? []
  if (lengthMm === undefined || widthMm === undefined || heightMm === undefined)
    throw new RangeError(`No sides for the common size at ${index}`)
  return { lengthMm, widthMm, heightMm }
}

function metric([id, label]: (typeof METRIC)[number], index: number): CommonSize {
  const sides = sidesAt(US.length + index)
  const litres = (sides.lengthMm * sides.widthMm * sides.heightMm) / MM3_PER_LITRE
  return { id: `cm-${id}`, label, system: 'metric', labelVolumeL: Math.round(litres), ...sides }
}

const gallons = ([volume, form]: (typeof US)[number], index: number): CommonSize => ({
  id: ['us', String(volume).replace('.', '-'), form].filter(Boolean).join('-'),
  label: form === '' ? `${volume} gal` : `${volume} ${form}`,
  system: 'us',
  labelVolumeL: Math.round(volume * L_PER_US_GALLON * 10) / 10,
  ...sidesAt(index),
})

/** The sizes the trade names, smallest first within each system. */
export const COMMON_SIZES: readonly CommonSize[] = [...US.map(gallons), ...METRIC.map(metric)]

/** The size with this id; undefined if there is none. @example commonSize('us-20-long')?.lengthMm // 762 */
export function commonSize(id: string): CommonSize | undefined {
  return COMMON_SIZES.find((size) => size.id === id)
}

const plain = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .replace(/ (?:tank|aquarium)$/, '')
    .replace(/(?<=\d) ?-? ?gal(?:lon)?s?\b\.?/, ' gal')
    .replace(/ gal[ -]+(?=[a-z])/, ' ')

/**
 * The size that the trade calls so, in any spelling of spaces, capitals and gallons; undefined if there is none.
 *
 * @example sizeCalled('20  Long')?.id // 'us-20-long'
 */
export const sizeCalled = (text: string): CommonSize | undefined => COMMON_SIZES.find((size) => plain(size.label) === plain(text))
