import type { Kind } from './kinds.ts'
import type { SpecOf } from './spec.ts'

/** How the name of a template's example begins. A file that still holds one is refused: the example is no product. */
export const EXAMPLE_MARK = 'Example: '

interface CsvExample<K extends Kind> {
  name: string
  maker: string
  parts?: string
  spec: SpecOf[K]
}

/** One filled row of each kind, with figures that are usual for its size and names that are ours. */
export const CSV_EXAMPLES: { readonly [K in Kind]: CsvExample<K> } = {
  tank: {
    name: 'Saltcote 90', maker: 'Saltcote',
    spec: { lengthMm: 900, widthMm: 450, heightMm: 450, glassMm: 8, bottomMm: 8, material: 'glass', style: 'rimless', labelVolumeL: 180, emptyMassKg: 32 },
  },
  kit: { name: 'Saltcote 90 set', maker: 'Saltcote', parts: 'Saltcote 90; Torvane 150 W x 2; Pellick C-1800 x 1', spec: { labelVolumeL: 180 } },
  stand: {
    name: 'Halden 90 stand', maker: 'Halden',
    spec: { topLengthMm: 910, topWidthMm: 460, heightMm: 750, ratedLoadKg: 300, top: 'full', base: 'end_panels', surface: 'plywood', massKg: 35 },
  },
  mat: { name: 'Halden mat 90 x 45', maker: 'Halden', spec: { lengthMm: 900, widthMm: 450, thicknessMm: 6 } },
  lid: { name: 'Saltcote lid 90', maker: 'Saltcote', spec: { lengthMm: 880, widthMm: 430, cover: 'glass' } },
  filter: {
    name: 'Pellick C-1000', maker: 'Pellick',
    spec: { type: 'canister', ratedFlowLph: 1000, powerW: 16, mediaVolumeL: 6, maxHeadM: 1.8, hoseMm: 16, cordMm: 1500 },
  },
  heater: { name: 'Torvane 150 W', maker: 'Torvane', spec: { powerW: 150, adjustable: true, externalController: false, lengthMm: 320, cordMm: 1500 } },
  light: { name: 'Millrace L-90', maker: 'Millrace', spec: { lengthMm: 880, widthMm: 120, powerW: 36, luminousFluxLm: 3600, photonFluxUmolS: 60, dimmable: true, cordMm: 1800 } },
  substrate: { name: 'Lockridge gravel 3 mm', maker: 'Lockridge', spec: { type: 'gravel', packMassKg: 10, packVolumeL: 6.5 } },
  conditioner: { name: 'Stillwell tap water', maker: 'Stillwell', spec: { packVolumeMl: 500, doseMlPerL: 0.13, bindsAmmonia: true } },
  ammonia_source: { name: 'Stillwell ammonium', maker: 'Stillwell', spec: { form: 'ammonium_chloride', strength: 1, packMassG: 100 } },
  test_kit: {
    name: 'Corbelle drops', maker: 'Corbelle',
    spec: { measuresAmmonia: true, measuresNitrite: true, measuresNitrate: true, measuresPh: true, measuresKh: true, lowestAmmoniaMgL: 0.25, tests: 100 },
  },
  thermometer: { name: 'Lockridge dial', maker: 'Lockridge', spec: { type: 'digital', alarm: true } },
  power: { name: 'Wendlemere strip', maker: 'Wendlemere', spec: { outlets: 6, ratedCurrentA: 15, protective: true, cordMm: 1800 } },
  filter_media: { name: 'Pellick ceramic rings', maker: 'Pellick', spec: { type: 'ceramic', packVolumeL: 1, packMassKg: 0.7 } },
  sump: {
    name: 'Osmere sump 60', maker: 'Osmere',
    spec: { lengthMm: 600, widthMm: 300, heightMm: 400, wallMm: 6, material: 'glass', totalVolumeL: 66, operatingVolumeL: 38 },
  },
  chiller: {
    name: 'Torvane cooler 180', maker: 'Torvane',
    spec: { powerW: 130, coolingW: 250, ratedVolumeL: 180, leastFlowLph: 500, mostFlowLph: 1500, hoseMm: 16, cordMm: 1800 },
  },
  air_pump: { name: 'Pellick air 2', maker: 'Pellick', spec: { powerW: 4, airFlowLph: 200, airOutlets: 2, mostDepthMm: 500, checkValve: true, cordMm: 1500 } },
  circulation_pump: { name: 'Pellick flow 3000', maker: 'Pellick', spec: { ratedFlowLph: 3000, powerW: 6, controllable: true, cordMm: 2000 } },
  skimmer: { name: 'Quarrick skimmer 200', maker: 'Quarrick', spec: { place: 'hang_on', ratedVolumeL: 200, airFlowLph: 150, powerW: 8, cordMm: 1800 } },
  co2: { name: 'Sedgeway gas set 500', maker: 'Sedgeway', spec: { type: 'pressurised', gasMassG: 500, solenoid: true, powerW: 3, cordMm: 1500 } },
  uv: { name: 'Torvane UV 9', maker: 'Torvane', spec: { powerW: 9, mostFlowLph: 600, ratedVolumeL: 250, lampHours: 8000, cordMm: 1800 } },
  hardscape: { name: 'Lockridge slate 10 kg', maker: 'Lockridge', spec: { type: 'rock', packMassKg: 10, lengthMm: 300, raisesHardness: false } },
  background: { name: 'Halden black film 120 x 60', maker: 'Halden', spec: { type: 'film', lengthMm: 1200, heightMm: 600, thicknessMm: 0.2 } },
  bacteria: { name: 'Stillwell starter', maker: 'Stillwell', spec: { form: 'liquid', packVolumeMl: 100, treatsL: 200, keptCold: true } },
  salt_mix: { name: 'Saltcote sea mix 4 kg', maker: 'Saltcote', spec: { packMassKg: 4, gramsPerL: 38 } },
  ro_unit: { name: 'Stillwell RO 190', maker: 'Stillwell', spec: { outputLPerDay: 190, wasteRatio: 3, stages: 4, deionising: true } },
  refractometer: { name: 'Corbelle sea lens', maker: 'Corbelle', spec: { type: 'optical', seaWaterScale: true, temperatureCompensated: true } },
  timer: { name: 'Wendlemere day timer', maker: 'Wendlemere', spec: { type: 'digital', outlets: 1, ratedPowerW: 1800, motorRated: true } },
  battery_backup: { name: 'Pellick air battery', maker: 'Pellick', spec: { type: 'air_pump', energyWh: 20, outputW: 2, cordMm: 1200 } },
  plumbing: { name: 'Pellick hose 16 mm', maker: 'Pellick', spec: { type: 'hose', insideMm: 16, lengthMm: 3000 } },
  tool: { name: 'Lockridge siphon', maker: 'Lockridge', spec: { type: 'siphon', lengthMm: 1800 } },
  food: { name: 'Sedgeway flakes', maker: 'Sedgeway', spec: { form: 'flakes', packMassG: 50, protein: 0.45 } },
  plant: { name: 'Crypt, brown, potted', maker: 'Sedgeway', spec: { light: 'low', place: 'front', lowestC: 20, highestC: 28, heightMm: 150, co2Needed: false, water: 'fresh' } },
  livestock: {
    name: 'Ember tetra', maker: 'Sedgeway',
    spec: { group: 'small-tropical', smallestVolumeL: 54, lowestC: 22, highestC: 28, adultLengthMm: 20, leastTogether: 10, jumps: false },
  },
  service: { name: 'Delivery and carrying in', maker: 'Sedgeway', spec: { type: 'delivery', durationMin: 60, atHome: true } },
} // prettier-ignore

/** Cells of the example under the template's headings. @example exampleCells('heater')['powerW'] // '150' */
export function exampleCells(kind: Kind): Record<string, string> {
  const { name, maker, parts, spec } = CSV_EXAMPLES[kind]
  const say = (value: unknown): string => (value === true ? 'yes' : value === false ? 'no' : String(value))
  const specCells = Object.fromEntries(Object.entries(spec).map(([key, value]) => [key, say(value)]))
  return { name: EXAMPLE_MARK + name, maker, oversize: 'no', ...(parts === undefined ? {} : { parts }), ...specCells }
}
