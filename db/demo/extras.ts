import { LIVING } from './living.ts'
import { entry, type ProductEntry } from './product-entry.ts'

/** What a tank may have besides. All makers are invented. */
const APPLIANCES: ProductEntry[] = [
  entry('chiller', 'Torvane Cooler 150', 329, { powerW: 110, coolingW: 200, ratedVolumeL: 150, leastFlowLph: 400, mostFlowLph: 1200, hoseMm: 16, cordMm: 1800 }),
  entry('chiller', 'Quarrick Chill 300', 449, { powerW: 190, ratedVolumeL: 300, hoseMm: 16, cordMm: 1800 }, { note: 'Maker states no cooling power' }),
  entry('air_pump', 'Pellick Air 1', 14.99, { powerW: 3, airFlowLph: 100, airOutlets: 1, mostDepthMm: 400, checkValve: false, cordMm: 1500 }),
  entry('air_pump', 'Pellick Air 2', 24.99, { powerW: 5, airFlowLph: 240, airOutlets: 2, mostDepthMm: 600, checkValve: true, cordMm: 1500 }),
  entry('circulation_pump', 'Pellick Drift 2000', 39.99, { ratedFlowLph: 2000, powerW: 4, controllable: false, cordMm: 1800 }),
  entry('circulation_pump', 'Pellick Drift 4000', 69.99, { ratedFlowLph: 4000, powerW: 8, controllable: true, cordMm: 2500 }),
  entry('skimmer', 'Quarrick Skim 200', 119, { place: 'hang_on', ratedVolumeL: 200, airFlowLph: 180, powerW: 8, cordMm: 2000 }),
  entry('skimmer', 'Quarrick Skim 300', 149, { place: 'hang_on', ratedVolumeL: 300, airFlowLph: 300, powerW: 12, cordMm: 2000 }),
  entry('skimmer', 'Quarrick Skim 400', 189, { place: 'in_sump', ratedVolumeL: 400, airFlowLph: 420, cordMm: 1800 }, { note: 'Label states no watts' }),
  entry('sump', 'Osmere Sump 60', 129, { lengthMm: 600, widthMm: 380, heightMm: 400, wallMm: 6, material: 'glass', totalVolumeL: 85, operatingVolumeL: 45 }, { oversize: true }),
  entry('sump', 'Osmere Sump 90', 189, { lengthMm: 900, widthMm: 380, heightMm: 400, wallMm: 8, material: 'glass' }, { oversize: true, note: 'Maker draws no line for the running water' }),
  entry('filter', 'Pellick Return 3000', 89, { type: 'return_pump', ratedFlowLph: 3000, powerW: 22, maxHeadM: 3, midHeadM: 2, midFlowLph: 1500, hoseMm: 25, fittings: 'usual', cordMm: 3000 }),
  entry('co2', 'Lumbry Gas set 500', 149, { type: 'pressurised', gasMassG: 500, solenoid: true, powerW: 3, cordMm: 1500 }),
  entry('co2', 'Lumbry Ferment', 24.99, { type: 'fermenting', solenoid: false }),
  entry('uv', 'Torvane Clear 9', 79, { powerW: 9, mostFlowLph: 600, ratedVolumeL: 250, lampHours: 8000, cordMm: 1800 }),
  entry('timer', 'Corbelle Timer', 11.99, { type: 'mechanical', outlets: 1, ratedPowerW: 1800, motorRated: false }),
  entry('timer', 'Corbelle Timer digital', 18.99, { type: 'digital', outlets: 1, ratedPowerW: 1800, motorRated: true }),
  entry('battery_backup', 'Pellick Air battery', 29.99, { type: 'air_pump', energyWh: 18, outputW: 2, cordMm: 1200 }),
] // prettier-ignore

const SALT_WATER: ProductEntry[] = [
  entry('salt_mix', 'Stillwell Sea 4 kg', 19.99, { packMassKg: 4, gramsPerL: 38 }),
  entry('salt_mix', 'Stillwell Sea 10 kg', 39.99, { packMassKg: 10, gramsPerL: 38 }, { oversize: false }),
  entry('salt_mix', 'Dosset Reef 20 kg', 74.99, { packMassKg: 20 }, { note: 'Label states no grams for a litre' }),
  entry('refractometer', 'Lockridge Sea lens', 34.99, { type: 'optical', seaWaterScale: true, temperatureCompensated: true }),
  entry('refractometer', 'Lockridge Swing arm', 12.99, { type: 'swing_arm', seaWaterScale: true, temperatureCompensated: false }),
  entry('ro_unit', 'Stillwell RO 190', 109, { outputLPerDay: 190, wasteRatio: 3, stages: 4, deionising: true }),
  entry('ro_unit', 'Stillwell RO 380', 149, { outputLPerDay: 380, wasteRatio: 2.5, stages: 4, deionising: true }),
]

const SCAPE: ProductEntry[] = [
  entry('hardscape', 'Millrace Slate 10 kg', 24.99, { type: 'rock', packMassKg: 10, lengthMm: 300, raisesHardness: false }),
  entry('hardscape', 'Millrace Dry reef rock 9 kg', 59.99, { type: 'dry_rock', packMassKg: 9, raisesHardness: true }),
  entry('hardscape', 'Millrace Root, large', 29.99, { type: 'wood', lengthMm: 450 }),
  entry('background', 'Halden Black film 48', 14.99, { type: 'film', lengthMm: 1220, heightMm: 610, thicknessMm: 0.2 }),
]

const UPKEEP: ProductEntry[] = [
  entry('filter_media', 'Pellick Rings 1 L', 12.99, { type: 'ceramic', packVolumeL: 1, packMassKg: 0.7 }),
  entry('filter_media', 'Pellick Floss', 4.99, { type: 'floss', packVolumeL: 3, lifeDays: 14 }),
  entry('bacteria', 'Dosset Starter 100 mL', 13.99, { form: 'liquid', packVolumeMl: 100, treatsL: 200, keptCold: true }),
  entry('plumbing', 'Pellick Hose 16 mm, 3 m', 9.99, { type: 'hose', insideMm: 16, lengthMm: 3000 }),
  entry('plumbing', 'Pellick Check valve', 3.49, { type: 'check_valve', insideMm: 4 }),
  entry('tool', 'Lockridge Siphon', 12.99, { type: 'siphon', lengthMm: 1800 }),
  entry('tool', 'Lockridge Bucket 10 L', 6.99, { type: 'bucket', volumeL: 10 }),
  entry('service', 'Kettle Lane delivery and carrying in', 45, { type: 'delivery', durationMin: 60, atHome: true }, { at: 'Kettle Lane' }),
  entry('service', 'Kettle Lane installation', 120, { type: 'installation', durationMin: 180, atHome: true }, { at: 'Kettle Lane' }),
  entry('service', 'Kettle Lane glass drilling', 35, { type: 'drilling', durationMin: 45, atHome: false }, { at: 'Kettle Lane' }),
]

export const EXTRAS: ProductEntry[] = [...APPLIANCES, ...SALT_WATER, ...SCAPE, ...UPKEEP, ...LIVING]
