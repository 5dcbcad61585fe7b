import { describe, expect, it } from 'vitest'
import { ABOVE_ITS_TAG } from '../../../core/pricing/printed-regular.ts'
import { SightingInput } from '../../../core/pricing/schema.ts'

const sighting = {
  id: '0198c0de-1111-7222-8333-444455556666',
  productId: '0198c0de-1111-7222-8333-444455556667',
  storeId: '0198c0de-1111-7222-8333-444455556668',
  condition: 'sale',
  priceMinor: 15_900,
  seenOn: '2026-10-20',
}
const faults = (changed: Record<string, unknown>) => {
  const read = SightingInput.safeParse({ ...sighting, ...changed })
  return read.success ? [] : read.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`)
}

describe('a sighting as a phone sends it', () => {
  it('is taken, its id in lower case', () => {
    expect(SightingInput.parse({ ...sighting, id: sighting.id.toUpperCase(), lastDay: '2026-10-26' })).toEqual({
      ...sighting,
      printedRegularMinor: null,
      lastDay: '2026-10-26',
      evidence: 'none',
      note: null,
    })
  })

  it.each([
    [{ priceMinor: 0 }, 'priceMinor: Price is 0. A price is above 0.'],
    [{ priceMinor: -1 }, 'priceMinor: Price is -1. A price is above 0.'],
    [{ priceMinor: 159.5 }, 'priceMinor: Price is a whole number of minor units: 15900 for 159.00.'],
    [{ priceMinor: '15900' }, 'priceMinor: Price is a whole number of minor units: 15900 for 159.00.'],
    [{ priceMinor: undefined }, 'priceMinor: Price is missing.'],
    [{ priceMinor: 1_000_000_001 }, 'priceMinor: Price is 1000000001 minor units, more than 1000000000. Check for a slipped decimal.'],
    [
      { id: '0198c0de-1111-4222-8333-444455556666' },
      'id: Id is a UUID of version 7, made once on the phone and sent again with every repeat.',
    ],
    [{ id: undefined }, 'id: Id is a UUID of version 7, made once on the phone and sent again with every repeat.'],
    [{ seenOn: '2026-02-29' }, 'seenOn: Day seen is "2026-02-29", which is not a day between 1990 and 2200. Write it like 2026-10-20.'],
    [{ seenOn: '0026-10-20' }, 'seenOn: Day seen is "0026-10-20", which is not a day between 1990 and 2200. Write it like 2026-10-20.'],
    [{ seenOn: '20/10/2026' }, 'seenOn: Day seen is "20/10/2026", which is not a day between 1990 and 2200. Write it like 2026-10-20.'],
    [{ condition: 'bargain' }, 'condition: Condition is one of: shelf, sale, clearance, used.'],
    [{ lastDay: '2026-10-19' }, "lastDay: The sale's last day 2026-10-19 is before the day it was seen, 2026-10-20. Check the two dates."],
    [{ lastDay: '2036-10-19' }, "lastDay: The sale's last day is 3652 days after it was seen. At most 366. Check the year."],
    [
      { condition: 'shelf', lastDay: '2026-10-26' },
      'lastDay: A last day belongs to a sale or a clearance. Take it out, or change the condition.',
    ],
    [{ reporterId: 'me' }, ': Sighting has no field "reporterId". Check the spelling, or leave it out.'],
    [{ printedRegularMinor: 15_899 }, `printedRegularMinor: ${ABOVE_ITS_TAG}`],
    [{ printedRegularMinor: 0 }, 'printedRegularMinor: Printed regular price is 0. A price is above 0.'],
  ])('%o is refused in words', (changed, message) => {
    expect(faults(changed)).toEqual([message])
  })
})
