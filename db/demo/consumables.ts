import { entry, type ProductEntry } from './product-entry.ts'

const SUBSTRATES: ProductEntry[] = [
  entry('substrate', 'Millrace Gravel 5 lb', 6.99, { type: 'gravel', packMassKg: 2.27, packVolumeL: 1.4 }),
  entry('substrate', 'Millrace Gravel 20 lb', 18.99, { type: 'gravel', packMassKg: 9.07, packVolumeL: 5.7 }),
  entry('substrate', 'Millrace Gravel 50 lb', 39.99, { type: 'gravel', packMassKg: 22.68, packVolumeL: 14.2 }),
  entry('substrate', 'Millrace Sand 10 kg', 21.99, { type: 'sand', packMassKg: 10, packVolumeL: 6.3 }),
  entry('substrate', 'Millrace Sand 20 lb', 16.99, { type: 'sand', packMassKg: 9.07 }),
  entry('substrate', 'Sedgeway Soil 3 L', 18.99, { type: 'active_soil', packMassKg: 2.8, packVolumeL: 3 }),
  entry('substrate', 'Sedgeway Soil 9 L', 44.99, { type: 'active_soil', packMassKg: 8.4, packVolumeL: 9 }),
]

const CONDITIONERS: ProductEntry[] = [
  entry('conditioner', 'Stillwell 100 mL', 5.99, { packVolumeMl: 100, doseMlPerL: 0.25, bindsAmmonia: false }),
  entry('conditioner', 'Stillwell 250 mL', 9.99, { packVolumeMl: 250, doseMlPerL: 0.25, bindsAmmonia: false }),
  entry('conditioner', 'Stillwell 500 mL', 15.99, { packVolumeMl: 500, doseMlPerL: 0.25, bindsAmmonia: false }),
  entry('conditioner', 'Dosset Bind 250 mL', 14.99, { packVolumeMl: 250, doseMlPerL: 0.05, bindsAmmonia: true }),
  entry('conditioner', 'Quarrick Treat 200 mL', 6.49, { packVolumeMl: 200 }, { note: 'Label states no dose in millilitres' }),
]

const AMMONIA: ProductEntry[] = [
  entry('ammonia_source', 'Dosset Chloride 50 g', 8.99, { form: 'ammonium_chloride', strength: 1, packMassG: 50 }),
  entry('ammonia_source', 'Dosset Solution 100 mL', 9.99, { form: 'ammonia_solution', strength: 0.05, packVolumeMl: 100 }),
  entry(
    'ammonia_source',
    'Stillwell Start 60 mL',
    7.99,
    { form: 'ammonia_solution', packVolumeMl: 60 },
    { note: 'Label states no strength' },
  ),
]

const TESTS: ProductEntry[] = [
  entry('test_kit', 'Lockridge Five', 36.99, {
    measuresAmmonia: true,
    measuresNitrite: true,
    measuresNitrate: true,
    measuresPh: true,
    measuresKh: true,
    lowestAmmoniaMgL: 0.25,
    tests: 100,
  }),
  entry('test_kit', 'Lockridge Ammonia', 12.99, {
    measuresAmmonia: true,
    measuresNitrite: false,
    measuresNitrate: false,
    measuresPh: false,
    measuresKh: false,
    lowestAmmoniaMgL: 0.1,
    tests: 50,
  }),
  entry('test_kit', 'Lockridge Nitrite', 10.99, {
    measuresAmmonia: false,
    measuresNitrite: true,
    measuresNitrate: false,
    measuresPh: false,
    measuresKh: false,
    tests: 60,
  }),
  entry('test_kit', 'Quarrick Strips 25', 11.49, {
    measuresAmmonia: false,
    measuresNitrite: true,
    measuresNitrate: true,
    measuresPh: true,
    measuresKh: true,
    tests: 25,
  }),
]

export const CONSUMABLES: ProductEntry[] = [...SUBSTRATES, ...CONDITIONERS, ...AMMONIA, ...TESTS]
