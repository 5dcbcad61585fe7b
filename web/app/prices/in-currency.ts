import type { PriceRecord } from '../../../core/pricing/record.ts'

/**
 * A record with the stores of one currency alone: amounts of two currencies are neither compared nor drawn on one scale.
 *
 * @example inCurrency(record, () => 'CAD', 'USD').views // []
 */
export const inCurrency = (record: PriceRecord, currencyOf: (storeId: string) => string, currency: string): PriceRecord => ({
  ...record,
  views: record.views.filter(({ storeId }) => currencyOf(storeId) === currency),
  sightings: record.sightings.filter(({ storeId }) => currencyOf(storeId) === currency),
})
