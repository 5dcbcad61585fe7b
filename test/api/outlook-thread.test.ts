import { describe, expect, it } from 'vitest'
import { OutlookBusy, reckonOutlook } from '../../api/outlook/outlook-thread.ts'
import { learn } from '../../core/pricing/outlook/outlook.ts'

const record = { sightings: [], products: [{ id: 'p', kind: 'heater' as const }], windows: [], asOf: '2026-11-26' }
const job = {
  learned: learn(record),
  record,
  until: '2026-12-26',
  waitingCostPerDayMinor: 0,
  leastSavingMinor: 0,
  draws: 50,
  seed: 1,
  lines: [{ productId: 'p', quantity: 1, storeIds: ['s'], factors: {} }],
}

describe('outlooks in a thread of their own', () => {
  it('are given in turn, without a price where none is known', async () => {
    const [first, second] = await Promise.all([reckonOutlook(job, 'ines'), reckonOutlook({ ...job, lines: [] }, 'ines')])
    expect(first.lines).toHaveLength(1)
    expect(Number.isNaN(first.lines[0]?.payTodayMinor)).toBe(true)
    expect(second.lines).toEqual([])
  })
  it('one person has eight waiting at most, and does not keep others out', async () => {
    const many = Array.from({ length: 9 }, () => reckonOutlook(job, 'ines'))
    const other = reckonOutlook(job, 'noor')
    const settled = await Promise.allSettled(many)
    expect(settled.filter(({ status }) => status === 'fulfilled')).toHaveLength(8)
    expect(settled[8]).toMatchObject({ status: 'rejected', reason: expect.any(OutlookBusy) })
    expect((await other).lines).toHaveLength(1)
    expect((await reckonOutlook(job, 'ines')).lines, 'later it is their turn again').toHaveLength(1)
  })
  it('a purchase that cannot be reckoned fails alone', async () => {
    await expect(reckonOutlook({ ...job, record: { ...record, sightings: null as never } }, 'ines')).rejects.toThrow(
      /could not be reckoned/,
    )
    expect((await reckonOutlook(job, 'ines')).lines).toHaveLength(1)
  })
})
