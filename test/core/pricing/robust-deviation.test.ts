import { fc, test } from '@fast-check/vitest'
import { median as oracleMedian, medianAbsoluteDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { median, robustDeviation } from '../../../core/pricing/robust-deviation.ts'

describe('robust deviations of a price from its record', () => {
  // Pricing reference, own values by an independent script; the factor 1.4826 is of Rousseeuw & Croux, JASA 88 (1993).
  it.each([
    [42, 5.939],
    [46, 2.84],
    [47, 2.108],
    [55, 3.246],
    [60, 6.21],
  ])('puts %s against 49, 50, 50, 51, 52, 48, 50 at %s', (price, expected) => {
    expect(robustDeviation(price, [49, 50, 50, 51, 52, 48, 50])).toBeCloseTo(expected, 3)
  })

  it('takes a spread of 0.02 in log where all prices were the same', () => {
    expect(robustDeviation(100 * Math.exp(0.07), [100, 100, 100])).toBeCloseTo(3.5, 9)
  })

  const record = fc.array(fc.integer({ min: 100, max: 100_000 }), { minLength: 1, maxLength: 40 })

  test.prop([record])('has the median of a statistics library', (values) => {
    expect(median(values)).toBeCloseTo(oracleMedian(values), 9)
  })

  test.prop([record, fc.integer({ min: 100, max: 100_000 })])(
    'agrees with a library’s median absolute deviation of the logs',
    (values, price) => {
      const logs = values.map(Math.log)
      const spread = Math.max(1.4826 * medianAbsoluteDeviation(logs), 0.02)
      expect(robustDeviation(price, values)).toBeCloseTo(Math.abs(Math.log(price) - oracleMedian(logs)) / spread, 6)
    },
  )

  test.prop([record, fc.integer({ min: 100, max: 100_000 }), fc.constantFrom(10, 100, 1000)])(
    'does not depend on the currency’s minor unit',
    (values, price, factor) => {
      expect(
        robustDeviation(
          price * factor,
          values.map((value) => value * factor),
        ),
      ).toBeCloseTo(robustDeviation(price, values), 6)
    },
  )
})
