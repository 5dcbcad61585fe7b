import type { Beta, Learned } from '../../../../core/pricing/outlook/learned.ts'
import { GRID_LENGTHS, GRID_SILENCES } from '../../../../core/pricing/outlook/sale-grid.ts'

export const ASOF = '2026-03-01'
/** Rate 2.8 a year, of sales of 10 days. */
export const POINT = 5 * GRID_SILENCES.length * GRID_LENGTHS.length + 2

/** A belief without doubt: prices that never change, sales of one depth, or with the residuals given, at one rate, sale times as told. */
export function certain(fields: { runs?: Beta; part?: Beta; saleDays?: number; residuals?: number[] } = {}): Learned {
  const { runs = [1e-6, 1], part = [1e-6, 1], saleDays = 50, residuals = [0] } = fields
  const kind = {
    logRate: { mean: 0, sd: 1, error: 0 },
    changes: { shape: 1e-9, days: 1, sizesLog: [0.1], meanError: 0, falsePrinted: 0.05 },
    depth: { mean: 0.25, meanError: 0, betweenSd: 0.05, residuals },
    part,
    saleDays,
  }
  const product = {
    kind: 'filter' as const,
    points: [POINT],
    kindShare: 0,
    depth: { mean: 0.25, sd: 0 },
    part,
    reportDays: 50,
    saleDays: Math.min(20, saleDays),
  }
  return {
    asOf: ASOF,
    kinds: { any: kind, filter: kind },
    products: { a: product, b: product },
    unwatched: {},
    stores: { here: { spring: runs }, there: { spring: runs } },
    running: {},
    trust: {},
  }
}
