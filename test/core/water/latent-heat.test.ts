import { expect, it } from 'vitest'
import { latentHeatKjKg } from '../../../core/water/latent-heat.ts'

/** Steam tables, from memory. */
it.each([
  [20, 2453.5],
  [25, 2441.7],
  [30, 2429.8],
])('agrees with steam tables at %s °C', (celsius, published) => {
  expect(Math.abs(latentHeatKjKg(celsius) / published - 1)).toBeLessThan(2e-4)
})
