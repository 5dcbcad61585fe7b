import { describe, expect, it } from 'vitest'
import { SizingBody } from '../../../core/sizing/schema.ts'

const tank = { name: 'Halden 90', quantity: 1, spec: { lengthMm: 900, widthMm: 450, heightMm: 450 } }
const faults = (body: unknown) => {
  const read = SizingBody.safeParse(body)
  return read.success ? [] : read.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`)
}

describe('a build and a room to size', () => {
  it('may say as little as a tank and what lives in it', () => {
    expect(SizingBody.parse({ gear: { tank }, livestockId: 'small-tropical' })).toEqual({
      gear: {
        tank,
        stand: null,
        mat: null,
        lid: null,
        filters: [],
        heaters: [],
        lights: [],
        substrates: [],
        conditioners: [],
        testKits: [],
        power: [],
        notNeeded: {},
      },
      conditions: {},
      livestockId: 'small-tropical',
    })
  })

  it.each([
    [
      { gear: { tank: { ...tank, spec: { ...tank.spec, heightMm: 5 } } }, livestockId: 'x' },
      'gear.tank.spec.heightMm: Height is 5 mm. For a tank it is between 100 and 2000 mm. Was it in inches?',
    ],
    [{ gear: { tank: { ...tank, quantity: 0 } }, livestockId: 'x' }, 'gear.tank.quantity: Quantity is 0. At least 1.'],
    [
      { gear: { tank, heaters: [{ name: '', quantity: 1, spec: { powerW: 40_000 } }] }, livestockId: 'x' },
      'gear.heaters.0.spec.powerW: Power is 40000 W. For a heater it is between 5 and 1000 W. Check the figure and its unit.',
    ],
    [{ gear: { tank, pumps: [] }, livestockId: 'x' }, 'gear: Gear has no field "pumps". Check the spelling, or leave it out.'],
    [{ gear: { tank } }, 'livestockId: Livestock group is missing.'],
    [{ livestockId: 'x' }, 'gear: Gear is missing.'],
    [
      { gear: { tank }, livestockId: 'x', conditions: { warmestRoomC: 86 } },
      'conditions.warmestRoomC: Warmest the room gets is 86 °C. For a room and its water it is between 5 and 45 °C. Was it in °F?',
    ],
    [
      { gear: { tank }, livestockId: 'x', conditions: { floor: 'lava' } },
      'conditions.floor: Floor is one of: ground_slab, timber_upper, concrete_upper, unknown.',
    ],
  ])('is refused in words that name field, limit and fix: case %#', (body, message) => {
    expect(faults(body)).toEqual([message])
  })
})
