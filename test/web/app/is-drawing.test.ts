import { describe, expect, it } from 'vitest'
import { METRIC } from '../../../core/units/say.ts'
import { isDrawing } from '../../../web/app/parts/is-drawing.ts'
import { dripLoopDrawing } from '../../../web/plots/drip-loop.ts'
import { floorSketch } from '../../../web/plots/floor-sketch.ts'
import { joistSketch } from '../../../web/plots/joist-sketch.ts'
import { priceRecordPlot, type PriceRecordData } from '../../../web/plots/price-record.ts'
import { saleCalendarPlot } from '../../../web/plots/sale-calendar.ts'
import { tankDrawings } from '../../../web/plots/tank-drawing.ts'

const NAMES = [
  'Reef Shop online=free',
  'Heater on200=W',
  'Sale one=free',
  '<rect onload=x>',
  '" onload="x',
  'See href=elsewhere',
  '<script',
]

describe.each(NAMES)('a drawing of something called %s', (name) => {
  it('is placed with a price record', () => {
    const run = { from: '2026-06-01', to: '2026-10-20', priceMinor: 20_000, kind: 'regular', regularMinor: null, assumed: false } as const
    const mark = { on: '2026-06-01', priceMinor: 20_000, kind: 'shelf' } as const
    const stores = [{ storeId: 's1', name, runs: [run], marks: [mark] }]
    const data: PriceRecordData = { productName: name, currency: 'USD', asOf: '2026-10-20', stores, countedSightings: 1, reporters: 1 }
    expect(isDrawing(priceRecordPlot(data, 1000, 372, { id: 'p' }))).toBe(true)
  })
  it('is placed with the sale calendar', () => {
    const rows = [{ name, runs: [{ first: '2026-11-20', last: '2026-11-30' }] }]
    expect(isDrawing(saleCalendarPlot({ asOf: '2026-10-20', rows }, 900, { id: 'c' }))).toBe(true)
  })
  it('is placed with the drip loop', () => {
    const figures = { neededMm: 1700, lowPointMm: 200, exitHeightMm: 1300, outletHeightMm: 300, distanceMm: 600 }
    expect(isDrawing(dripLoopDrawing(figures, { id: 'd', reader: METRIC, what: name }))).toBe(true)
  })
  it('is placed with a tank', () => {
    const tank = { letter: name, lengthMm: 900, widthMm: 450, heightMm: 500, waterBelowRimMm: 40, substrateDepthMm: 50, standHeightMm: 700 }
    const [svg = ''] = tankDrawings([{ ...tank, style: 'rimmed' }], { id: 't', reader: METRIC, stand: 'cut' })
    expect(isDrawing(svg)).toBe(true)
  })
})

it('places the sketches of a room', () => {
  expect(isDrawing(floorSketch('timber_upper'))).toBe(true)
  expect(isDrawing(joistSketch('across'))).toBe(true)
})

it.each([
  '',
  'Reef Shop',
  '<p></p>',
  '<svg><rect onload="x"/></svg>',
  '<svg onload="x"></svg>',
  '<svg><rect onload=x></svg>',
  '<svg><rect/onload="x"></svg>',
  '<svg><rect x="1"onload="x"/></svg>',
  '<svg><rect x"a onload="1" "/></svg>',
  "<svg><rect ONLOAD='x'/></svg>",
  '<svg><script>x</script></svg>',
  '<svg><SCRIPT>x',
  '<svg><foreignObject></foreignObject></svg>',
  '<svg><a href="javascript:x">y</a></svg>',
  '<svg><a xlink:href="&#106;avascript:x">y</a></svg>',
  '<svg><animate attributeName="href" to="javascript:x"/></svg>',
  '<svg><!-- --><rect/></svg>',
  '<svg><rect onload="x',
])('refuses %s', (markup) => expect(isDrawing(markup)).toBe(false))
