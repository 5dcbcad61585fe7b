import { expect, it } from 'vitest'
import { heatCapacity } from '../../../core/sizing/heat-capacity.ts'

const mass = { emptyKg: 2, substrateKg: 3, waterKg: 5, runningKg: 10, brimKg: 10 }

/** Handbook values, from memory: water 4180, sand 830, window glass 840, acrylic 1470 J/(kg K). By hand: 20 900 + 2490 and 1680 or 2940. */
it.each([
  ['glass', 25_070],
  ['acrylic', 26_330],
] as const)('stores heat in water, substrate and panels of %s', (material, expected) => expect(heatCapacity(mass, material)).toBe(expected))
