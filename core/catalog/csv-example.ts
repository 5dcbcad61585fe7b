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
} // prettier-ignore

/** Cells of the example under the template's headings. @example exampleCells('heater')['powerW'] // '150' */
export function exampleCells(kind: Kind): Record<string, string> {
  const { name, maker, parts, spec } = CSV_EXAMPLES[kind]
  const say = (value: unknown): string => (value === true ? 'yes' : value === false ? 'no' : String(value))
  const specCells = Object.fromEntries(Object.entries(spec).map(([key, value]) => [key, say(value)]))
  return { name: EXAMPLE_MARK + name, maker, oversize: 'no', ...(parts === undefined ? {} : { parts }), ...specCells }
}
