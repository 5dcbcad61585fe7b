import type { LineCost } from '../../../core/pricing/tiers.ts'

/** One shelf price of 100.00, seen by two, at a store. */
export const aLineCost = (fields: Partial<LineCost>): LineCost => ({
  lineId: 'a',
  productId: 'heater',
  quantity: 1,
  storeId: 'kettle-lane',
  fullMinor: 10_000,
  todayMinor: 10_000,
  bestSeenMinor: 10_000,
  unitTodayMinor: 10_000,
  unitFullMinor: 10_000,
  condition: 'shelf',
  seenOn: '2026-11-20',
  holdsUntil: null,
  lastDayStated: false,
  age: 'current',
  reporters: 2,
  sightingIds: [],
  best: null,
  ...fields,
})
