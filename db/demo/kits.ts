import { entry, type ProductEntry } from './product-entry.ts'

/** A kit's price lies under the sum of its parts, and its heater suits a warm room: a cool one is for the report to find. */
const kit = (name: string, price: number, labelVolumeL: number, parts: Array<[string, number]>, oversize = false): ProductEntry =>
  entry('kit', name, price, { labelVolumeL }, { parts, oversize })

export const KITS: ProductEntry[] = [
  kit('Wendlemere Start 5', 84.99, 20.8, [
    ['Wendlemere 5.5', 1],
    ['Wendlemere Lid 16', 1],
    ['Halden Row 16', 1],
    ['Quarrick In 250', 1],
    ['Torvane 25 W', 1],
  ]),
  kit('Wendlemere Start 10', 109.99, 37.9, [
    ['Wendlemere 10', 1],
    ['Wendlemere Lid 20', 1],
    ['Halden Row 20', 1],
    ['Pellick H-300', 1],
    ['Torvane 50 W', 1],
    ['Torvane Strip', 1],
  ]),
  kit('Wendlemere Start 20', 149.99, 75.7, [
    ['Wendlemere 20 long', 1],
    ['Wendlemere Lid 30', 1],
    ['Halden Row 30', 1],
    ['Pellick H-600', 1],
    ['Torvane 100 W', 1],
    ['Torvane Strip', 1],
  ]),
  kit('Wendlemere Start 29', 179.99, 109.8, [
    ['Wendlemere 29', 1],
    ['Wendlemere Lid 30', 1],
    ['Halden Row 30', 1],
    ['Pellick H-600', 1],
    ['Torvane 100 W', 1],
    ['Torvane Strip', 1],
  ]),
  kit(
    'Wendlemere Start 40',
    269.99,
    151.4,
    [
      ['Wendlemere 40 breeder', 1],
      ['Wendlemere Lid 36 deep', 1],
      ['Halden Row 36', 1],
      ['Pellick H-600', 1],
      ['Torvane 100 W', 1],
      ['Torvane Strip', 1],
      ['Stillwell 100 mL', 1],
    ],
    true,
  ),
  kit(
    'Wendlemere Start 55',
    339.99,
    208.2,
    [
      ['Wendlemere 55', 1],
      ['Wendlemere Lid 48 slim', 1],
      ['Halden Row 48', 1],
      ['Pellick H-1200', 1],
      ['Torvane 200 W', 1],
      ['Torvane Glass', 1],
    ],
    true,
  ),
  kit(
    'Wendlemere Start 75',
    429.99,
    283.9,
    [
      ['Wendlemere 75', 1],
      ['Wendlemere Lid 48 deep', 1],
      ['Halden Row 48', 1],
      ['Pellick H-1200', 1],
      ['Torvane 200 W', 1],
      ['Torvane Glass', 1],
    ],
    true,
  ),
  kit('Osmere Studio 30', 149, 27, [
    ['Osmere Clear 30', 1],
    ['Osmere Cover 30', 1],
    ['Harrowfen Mat 30', 1],
    ['Lumbry Strand 30', 1],
    ['Pellick H-300', 1],
  ]),
  kit('Osmere Studio 60', 389, 65, [
    ['Osmere Clear 60', 1],
    ['Osmere Cover 60', 1],
    ['Harrowfen Mat 60', 1],
    ['Lumbry Strand 60', 1],
    ['Pellick C-600', 1],
    ['Torvane 75 W', 1],
  ]),
  kit(
    'Osmere Studio 90',
    899,
    182,
    [
      ['Osmere Clear 90', 1],
      ['Osmere Cover 90', 1],
      ['Harrowfen Mat 90', 1],
      ['Lumbry Strand 90', 1],
      ['Pellick C-1000', 1],
      ['Torvane 150 W', 1],
      ['Harrowfen Cabinet 90', 1],
    ],
    true,
  ),
]
