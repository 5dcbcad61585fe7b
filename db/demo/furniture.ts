import { entry, type ProductEntry } from './product-entry.ts'
import { CM_SIZES, inch, US_SIZES } from './tanks.ts'

/** Stands, mats and lids that go with the tanks, from 60 cm up for the stands: a smaller tank stands on a shelf or a desk. */
const FRAMES: ProductEntry[] = [
  entry('stand', 'Thornby Frame 30', 69.99, {
    topLengthMm: inch(30),
    topWidthMm: inch(12),
    heightMm: 710,
    ratedLoadKg: 160,
    top: 'perimeter',
    base: 'feet',
    surface: 'metal',
    massKg: 9,
  }),
  entry(
    'stand',
    'Thornby Frame 36',
    109.99,
    {
      topLengthMm: inch(36),
      topWidthMm: inch(18),
      heightMm: 710,
      ratedLoadKg: 270,
      top: 'perimeter',
      base: 'feet',
      surface: 'metal',
      massKg: 14,
    },
    { oversize: true },
  ),
  entry(
    'stand',
    'Thornby Bench 36',
    94.99,
    { topLengthMm: inch(36), topWidthMm: inch(18), heightMm: 710, top: 'full', base: 'end_panels', surface: 'particle_board', massKg: 24 },
    { oversize: true, note: 'Maker states no load' },
  ),
  entry(
    'stand',
    'Thornby Bench 48',
    149.99,
    { topLengthMm: inch(48), topWidthMm: inch(18), heightMm: 710, top: 'full', base: 'end_panels', surface: 'particle_board', massKg: 31 },
    { oversize: true, note: 'Maker states no load' },
  ),
  entry(
    'stand',
    'Thornby Frame 48',
    159.99,
    {
      topLengthMm: inch(48),
      topWidthMm: inch(13),
      heightMm: 710,
      ratedLoadKg: 340,
      top: 'perimeter',
      base: 'feet',
      surface: 'metal',
      massKg: 17,
    },
    { oversize: true },
  ),
  entry(
    'stand',
    'Thornby Frame 48 deep',
    189.99,
    {
      topLengthMm: inch(48),
      topWidthMm: inch(18),
      heightMm: 710,
      ratedLoadKg: 450,
      top: 'perimeter',
      base: 'feet',
      surface: 'metal',
      massKg: 20,
    },
    { oversize: true },
  ),
  entry(
    'stand',
    'Thornby Frame 72',
    299.99,
    {
      topLengthMm: inch(72),
      topWidthMm: inch(18),
      heightMm: 710,
      ratedLoadKg: 750,
      top: 'perimeter',
      base: 'feet',
      surface: 'metal',
      massKg: 34,
    },
    { oversize: true },
  ),
]

const CABINETS: ProductEntry[] = CM_SIZES.filter((size) => size.cm[0] >= 60).map((size, index) => {
  const [length, width] = size.cm
  const kilos = [160, 280, 380, 420, 600, 900][index]
  const cabinet = {
    topLengthMm: length * 10,
    topWidthMm: width * 10,
    heightMm: 800,
    top: 'full',
    base: 'end_panels',
    surface: 'plywood',
    massKg: Math.round(length * 0.42),
  } as const
  // The 75 cm cabinet's maker prints no load: a report must not guess it.
  const spec = length === 75 ? cabinet : { ...cabinet, ratedLoadKg: kilos }
  return entry('stand', `Harrowfen Cabinet ${length}`, 119 + length * 2.4, spec, { oversize: length >= 90 })
})

const MATS: ProductEntry[] = CM_SIZES.map(({ cm: [length, width] }) =>
  entry('mat', `Harrowfen Mat ${length}`, 6 + Math.round((length * width) / 250), {
    lengthMm: length * 10,
    widthMm: width * 10,
    thicknessMm: 6,
  }),
)

const US_LIDS: ProductEntry[] = US_SIZES.map((size) => {
  const [length, width] = size.inches
  const name = `Wendlemere Lid ${length}${width === 18 ? ' deep' : width === 13 ? ' slim' : ''}`
  return entry('lid', name, 9.99 + Math.round((length * width) / 14), { lengthMm: inch(length), widthMm: inch(width), cover: 'glass' })
}).filter((lid, index, all) => all.findIndex((one) => one.product.name === lid.product.name) === index)

const CM_LIDS: ProductEntry[] = CM_SIZES.map(({ cm: [length, width] }) =>
  entry('lid', `Osmere Cover ${length}`, 14 + Math.round((length * width) / 110), {
    lengthMm: length * 10 - 6,
    widthMm: width * 10 - 6,
    cover: 'glass',
  }),
)

const MESH: ProductEntry[] = [
  entry('lid', 'Quarrick Mesh 36', 39.99, { lengthMm: 914, widthMm: 457, cover: 'mesh' }, { note: 'Keeps fish in, lets water out' }),
]

export const FURNITURE: ProductEntry[] = [...FRAMES, ...CABINETS, ...MATS, ...US_LIDS, ...CM_LIDS, ...MESH]
