import { entry, type ProductEntry } from './product-entry.ts'

/** Plants and animals by their trade names, from a nursery of the scenario; what they need is common practice. */
export const LIVING: ProductEntry[] = [
  entry('plant', 'Sedgeway Crypt, brown', 6.99, {
    light: 'low', place: 'front', lowestC: 20, highestC: 28, heightMm: 150, co2Needed: false, water: 'fresh',
  }),
  entry('plant', 'Sedgeway Java fern', 8.99, {
    light: 'low', place: 'on_hardscape', lowestC: 18, highestC: 28, heightMm: 250, co2Needed: false, water: 'fresh',
  }),
  entry('plant', 'Sedgeway Dwarf hairgrass', 7.49, { light: 'high', place: 'front', heightMm: 80, co2Needed: true, water: 'fresh' }),
  entry('livestock', 'Sedgeway Ember tetra', 3.49, {
    group: 'small-tropical', smallestVolumeL: 54, lowestC: 22, highestC: 28, adultLengthMm: 20, leastTogether: 10, jumps: false,
  }),
  entry('livestock', 'Sedgeway Cherry shrimp', 3.99, {
    group: 'dwarf-shrimp', smallestVolumeL: 15, lowestC: 16, highestC: 26, adultLengthMm: 30, leastTogether: 6, jumps: false,
  }),
  entry('livestock', 'Sedgeway Clownfish, pair', 39.99, {
    group: 'marine-fish', smallestVolumeL: 120, lowestC: 23, highestC: 27, adultLengthMm: 90, leastTogether: 2, jumps: true,
  }),
  entry('food', 'Sedgeway Flakes 50 g', 6.49, { form: 'flakes', packMassG: 50, protein: 0.45 }),
  entry('food', 'Sedgeway Pellets 100 g', 9.99, { form: 'pellets', packMassG: 100 }),
] // prettier-ignore
