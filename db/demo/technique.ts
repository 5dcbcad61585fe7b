import { entry, type ProductEntry } from './product-entry.ts'
import { CM_SIZES, inch } from './tanks.ts'

const FILTERS: ProductEntry[] = [
  entry('filter', 'Pellick Sponge S', 7.99, { type: 'sponge', ratedFlowLph: 120, powerW: 2, mediaVolumeL: 0.3, cordMm: 1500 }),
  entry(
    'filter',
    'Pellick Sponge L',
    12.99,
    { type: 'sponge', ratedFlowLph: 300, powerW: 3, mediaVolumeL: 0.8 },
    { note: 'Air pump included' },
  ),
  entry('filter', 'Pellick H-300', 24.99, { type: 'hang_on', ratedFlowLph: 300, powerW: 4, mediaVolumeL: 0.5, cordMm: 1500 }),
  entry('filter', 'Pellick H-600', 36.99, { type: 'hang_on', ratedFlowLph: 600, powerW: 6, mediaVolumeL: 0.9, cordMm: 1500 }),
  entry('filter', 'Pellick H-1200', 54.99, { type: 'hang_on', ratedFlowLph: 1200, powerW: 11, mediaVolumeL: 1.6, cordMm: 1800 }),
  entry('filter', 'Pellick C-600', 89.99, {
    type: 'canister',
    ratedFlowLph: 600,
    powerW: 8,
    mediaVolumeL: 3,
    maxHeadM: 1.3,
    midHeadM: 0.8,
    midFlowLph: 330,
    hoseMm: 12,
    hoseLengthMm: 2600,
    fittings: 'usual',
    cordMm: 1500,
  }),
  entry('filter', 'Pellick C-1000', 129.99, {
    type: 'canister',
    ratedFlowLph: 1000,
    powerW: 14,
    mediaVolumeL: 5.2,
    maxHeadM: 1.6,
    midHeadM: 1,
    midFlowLph: 540,
    hoseMm: 16,
    hoseLengthMm: 2800,
    fittings: 'usual',
    cordMm: 1700,
  }),
  entry('filter', 'Pellick C-1400', 169.99, {
    type: 'canister',
    ratedFlowLph: 1400,
    powerW: 20,
    mediaVolumeL: 7.5,
    maxHeadM: 1.9,
    midHeadM: 1.2,
    midFlowLph: 760,
    hoseMm: 16,
    hoseLengthMm: 3000,
    fittings: 'usual',
    cordMm: 1800,
  }),
  entry('filter', 'Pellick C-1800', 219.99, {
    type: 'canister',
    ratedFlowLph: 1800,
    powerW: 28,
    mediaVolumeL: 10,
    maxHeadM: 2.2,
    midHeadM: 1.4,
    midFlowLph: 980,
    hoseMm: 22,
    hoseLengthMm: 3200,
    fittings: 'few',
    cordMm: 1800,
  }),
  entry(
    'filter',
    'Quarrick Drum 900',
    104,
    { type: 'canister', ratedFlowLph: 900, powerW: 12, hoseMm: 16 },
    { note: 'Maker states no media volume and no head' },
  ),
  entry('filter', 'Quarrick In 250', 22, { type: 'internal', ratedFlowLph: 250, powerW: 4, mediaVolumeL: 0.2, cordMm: 1400 }),
  entry('filter', 'Quarrick In 700', 41, { type: 'internal', ratedFlowLph: 700, powerW: 9, mediaVolumeL: 0.6, cordMm: 1400 }),
]

const torvane = (powerW: number, price: number, lengthMm: number): ProductEntry =>
  entry('heater', `Torvane ${powerW} W`, price, { powerW, adjustable: true, lengthMm, cordMm: 1800 })

/** With a controller in the box that stays outside the tank and switches off a heater whose own thermostat sticks. */
const twin = (powerW: number, price: number, lengthMm: number): ProductEntry =>
  entry(
    'heater',
    `Quarrick Twin ${powerW} with controller`,
    price,
    { powerW, adjustable: true, externalController: true, lengthMm, cordMm: 2200 },
    { note: 'Heater and external controller in one box' },
  )

const HEATERS: ProductEntry[] = [
  torvane(25, 21.99, 160),
  torvane(50, 24.99, 200),
  torvane(75, 27.99, 230),
  torvane(100, 29.99, 260),
  torvane(150, 34.99, 310),
  torvane(200, 39.99, 350),
  torvane(300, 47.99, 420),
  entry(
    'heater',
    'Quarrick Fixed 50',
    14.99,
    { powerW: 50, adjustable: false, lengthMm: 180, cordMm: 1200 },
    { note: 'Set to 25 °C at the works' },
  ),
  twin(50, 49, 200),
  twin(100, 62, 240),
  twin(200, 84, 300),
  twin(300, 99, 340),
]

/** Light bars: power and flux grow with the length they span. */
const ROWS: ProductEntry[] = [16, 20, 24, 30, 36, 48, 60, 72].map((length) =>
  entry('light', `Halden Row ${length}`, 12 + length * 1.2, {
    lengthMm: inch(length),
    widthMm: 110,
    powerW: Math.round(length * 0.72),
    luminousFluxLm: Math.round(length * 72),
    spectrum: 'white',
    dimmable: length >= 30,
    cordMm: 1800,
  }),
)
const STRANDS: ProductEntry[] = CM_SIZES.map(({ cm: [length] }) => {
  const spec = { lengthMm: length * 10, widthMm: 80, powerW: Math.round(length * 0.5), dimmable: true, cordMm: 2000 }
  // The maker of the long one prints watts and nothing else.
  return entry(
    'light',
    `Lumbry Strand ${length}`,
    39 + length * 1.5,
    length === 150 ? spec : { ...spec, luminousFluxLm: length * 55, photonFluxUmolS: Math.round(length * 0.82), spectrum: 'white' },
  )
})

const THERMOMETERS: ProductEntry[] = [
  entry('thermometer', 'Torvane Glass', 4.99, { type: 'glass', alarm: false }),
  entry('thermometer', 'Torvane Strip', 2.99, { type: 'strip', alarm: false }),
  entry('thermometer', 'Torvane Digital', 11.99, { type: 'digital', alarm: false }),
  entry('thermometer', 'Torvane Watch', 24.99, { type: 'digital', alarm: true }),
]

const POWER: ProductEntry[] = [
  entry('power', 'Corbelle GFCI Strip 6', 34.99, { outlets: 6, ratedCurrentA: 15, protective: true, cordMm: 1800 }),
  entry('power', 'Corbelle GFCI Strip 8', 44.99, { outlets: 8, ratedCurrentA: 15, protective: true, cordMm: 1800 }),
  entry('power', 'Corbelle GFCI Inline', 24.99, { outlets: 1, ratedCurrentA: 15, protective: true, cordMm: 600 }),
  entry('power', 'Corbelle Strip 6', 14.99, { outlets: 6, ratedCurrentA: 15, protective: false, cordMm: 1800 }),
]

export const TECHNIQUE: ProductEntry[] = [...FILTERS, ...HEATERS, ...ROWS, ...STRANDS, ...THERMOMETERS, ...POWER]
