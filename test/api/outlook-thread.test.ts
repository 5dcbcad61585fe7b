import { describe, expect, it } from 'vitest'
import { OutlookBusy, reckonOutlook, withRoom } from '../../api/outlook/outlook-thread.ts'
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
  it('one person has eight under way at most, told before anything is read, and does not keep others out', async () => {
    let read = 0
    const ask = (by: string) =>
      withRoom(by, async () => {
        read += 1
        return reckonOutlook(job, by)
      })
    const many = Array.from({ length: 20 }, () => ask('ines'))
    const other = ask('noor')
    const settled = await Promise.allSettled(many)
    expect(settled.filter(({ status }) => status === 'fulfilled')).toHaveLength(8)
    expect(settled[8]).toMatchObject({ status: 'rejected', reason: expect.any(OutlookBusy) })
    expect(read).toBe(9)
    expect((await other).lines).toHaveLength(1)
    expect((await ask('ines')).lines, 'later it is their turn again').toHaveLength(1)
  })
  it('people take turns: who asks once waits for one of each other person at most', async () => {
    const order: string[] = []
    const ask = async (by: string) => {
      await reckonOutlook(job, by)
      order.push(by)
    }
    await Promise.all([...Array.from({ length: 6 }, () => ask('ines')), ask('noor')])
    expect(order.indexOf('noor')).toBeLessThanOrEqual(1)
  })
  it('a purchase that cannot be reckoned fails alone', async () => {
    await expect(reckonOutlook({ ...job, record: { ...record, sightings: null as never } }, 'ines')).rejects.toThrow(
      /could not be reckoned/,
    )
    expect((await reckonOutlook(job, 'ines')).lines).toHaveLength(1)
  })
})
