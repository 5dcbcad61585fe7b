import { expect, it } from 'vitest'
import { METRIC } from '../../../core/units/say.ts'
import { cordList } from '../../../web/pages/cord-list.ts'
import { conditions, gear, one } from '../../core/sizing/sample-build.ts'

const bare = { heaters: [], filters: [], lights: [], appliances: [] }
const lights = [one('Halden', { cordMm: 1200, lengthMm: 1150 })]
const drawn = (power: ReturnType<typeof one<{ outlets: number; cordMm: number }>>[]): string =>
  String(cordList({ gear: gear({ ...bare, lights, power }), conditions: conditions() }, METRIC))

it('draws a cord to a strip as one to a strip, and any other to the outlet', () => {
  // 1.2 m reach the strip, which hangs beside the rim, and not the wall.
  expect(drawn([one('Corbelle', { outlets: 6, cordMm: 2500 })])).toContain('>Strip at 129.3 cm<')
  expect(drawn([])).toContain('>Outlet at 30 cm<')
})
