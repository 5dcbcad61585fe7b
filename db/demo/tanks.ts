import { entry, type ProductEntry } from './product-entry.ts'

/** The eight sizes of the scenario, nano to large: as one maker labels them in gallons and inches, and another in centimetres. */
export const US_SIZES = [
  { gallons: 5.5, inches: [16, 8, 10], glassMm: 3, price: 18.99 },
  { gallons: 10, inches: [20, 10, 12], glassMm: 3, price: 24.99 },
  { gallons: 20, form: 'long', inches: [30, 12, 12], glassMm: 5, price: 54.99 },
  { gallons: 29, inches: [30, 12, 18], glassMm: 5, price: 79.99 },
  { gallons: 40, form: 'breeder', inches: [36, 18, 16], glassMm: 6, price: 139.99 },
  { gallons: 55, inches: [48, 13, 21], glassMm: 6, price: 179.99 },
  { gallons: 75, inches: [48, 18, 21], glassMm: 10, price: 249.99 },
  { gallons: 125, inches: [72, 18, 21], glassMm: 10, price: 469.99 },
] as const

export const CM_SIZES = [
  { cm: [30, 30, 30], glassMm: 5, price: 64 },
  { cm: [45, 27, 30], glassMm: 5, price: 89 },
  { cm: [60, 30, 36], glassMm: 6, price: 129 },
  { cm: [75, 40, 45], glassMm: 8, price: 229 },
  { cm: [90, 45, 45], glassMm: 10, price: 329 },
  { cm: [100, 40, 50], glassMm: 10, price: 389 },
  { cm: [120, 50, 50], glassMm: 12, price: 579 },
  { cm: [150, 50, 60], glassMm: 15, price: 989 },
] as const

export const inch = (value: number): number => Math.round(value * 25.4)
const gallon = (value: number): number => Math.round(value * 3.785411784 * 10) / 10

/** From here on a parcel service asks a surcharge: a tank of 36 in. */
const OVERSIZE_MM = 900

export const usName = (size: (typeof US_SIZES)[number]): string => `Wendlemere ${size.gallons}${'form' in size ? ` ${size.form}` : ''}`
export const cmName = (size: (typeof CM_SIZES)[number]): string => `Osmere Clear ${size.cm[0]}`

const RIMMED: ProductEntry[] = US_SIZES.map((size) => {
  const [length, width, height] = size.inches.map(inch) as [number, number, number]
  return entry(
    'tank',
    usName(size),
    size.price,
    {
      lengthMm: length,
      widthMm: width,
      heightMm: height,
      glassMm: size.glassMm,
      material: 'glass',
      style: size.gallons >= 125 ? 'braced' : 'rimmed',
      labelVolumeL: gallon(size.gallons),
    },
    { oversize: length >= OVERSIZE_MM, note: `Rimmed tank, ${size.inches.join(' x ')} in` },
  )
})

const RIMLESS: ProductEntry[] = CM_SIZES.map((size) => {
  const [length, width, height] = size.cm.map((cm) => cm * 10) as [number, number, number]
  return entry(
    'tank',
    cmName(size),
    size.price,
    {
      lengthMm: length,
      widthMm: width,
      heightMm: height,
      glassMm: size.glassMm,
      bottomMm: size.glassMm,
      material: 'glass',
      style: 'rimless',
      labelVolumeL: Math.round((length * width * height) / 1e6),
      emptyMassKg: Math.round((2.5 * size.glassMm * (2 * length * height + 2 * width * height + length * width)) / 1e5) / 10,
    },
    { oversize: length >= OVERSIZE_MM, note: `Rimless, polished edges, ${size.cm.join(' x ')} cm` },
  )
})

/** Makers leave things out: these are the ones whose spec sheets have a gap. */
const INCOMPLETE: ProductEntry[] = [
  entry('tank', 'Quarrick Cube 8', 49.99, {
    lengthMm: 305,
    widthMm: 305,
    heightMm: 330,
    material: 'acrylic',
    style: 'rimless',
    labelVolumeL: 30.3,
  }),
  entry(
    'tank',
    'Quarrick Bow 36',
    199.99,
    { lengthMm: 914, widthMm: 381, heightMm: 508, shape: 'bow_front', bowMm: 76, labelVolumeL: 136.3 },
    { oversize: true, note: 'Maker states no glass thickness' },
  ),
]

export const TANKS: ProductEntry[] = [...RIMMED, ...RIMLESS, ...INCOMPLETE]
