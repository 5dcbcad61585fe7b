import { describe, expect, it } from 'vitest'
import type { Slot } from '../../../../core/catalog/kinds.ts'
import type { SlotRow } from '../../../../core/quote/revision.ts'
import { isUnanswered, slotAfter, unanswered } from '../../../../web/app/quotes/next-slot.ts'
import { sampleReport } from '../../../support/sample-report.ts'

const row = (slot: Slot, change: Partial<SlotRow> = {}): SlotRow => ({
  slot, answer: 'missing', lineId: null, kind: null, text: 'not chosen yet', productId: null, quantity: 0, required: true, needs: null, ...change,
}) // prettier-ignore
const report = sampleReport(0, 100)
const quiet = { ...report, findings: [] }

describe('the next open slot', () => {
  it('follows the order in which a build is put together, and begins anew at the end', () => {
    expect(slotAfter(['filter', 'heat', 'carry_tank'], 'filter')).toBe('heat')
    expect(slotAfter(['filter', 'heat'], 'test_water')).toBe('filter')
    expect(slotAfter(['heat'], 'heat')).toBeUndefined()
    expect(slotAfter(['hold_water', 'heat'], null)).toBe('hold_water')
  })

  it('is one that must be filled and has no answer; a product that is gone has one', () => {
    const rows = [
      row('hold_water', { answer: 'buy', lineId: 'l' }),
      row('heat'),
      row('light', { required: false }),
      row('filter', { lineId: 'gone' }),
    ]
    expect(unanswered({ rows, report: quiet })).toEqual(['heat'])
    expect(isUnanswered({ rows }, 'heat')).toBe(true)
    expect(isUnanswered({ rows }, 'filter')).toBe(false)
  })

  it('is also one that may stay empty, where a check condemns that', () => {
    const [first] = report.findings
    if (!first) throw new Error('the sample report has findings')
    const condemning = { ...report, findings: [{ ...first, check: 'substrate_depth' as const, verdict: 'does_not_fit' as const }] }
    expect(unanswered({ rows: [row('substrate', { required: false }), row('light', { required: false })], report: condemning })).toEqual([
      'substrate',
    ])
  })
})
