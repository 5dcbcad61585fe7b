import { describe, expect, it } from 'vitest'
import { backupName, outlived, readName, REASONS, type Reason } from '../../../api/backups/kept-backups.ts'

const at = (minutesAgo: number, reason: Reason = 'scheduled') => ({
  madeAt: new Date(Date.parse('2026-11-26T12:00:00Z') - minutesAgo * 60_000),
  reason,
})

it('reads from a name what was put into it', () => {
  const madeAt = new Date('2026-11-26T05:43:15.007Z')
  for (const reason of REASONS)
    for (const locked of [true, false]) {
      const name = backupName(madeAt, reason, locked)
      expect(readName(name)).toEqual({ name, madeAt, reason, locked })
    }
  for (const other of [
    'link-key',
    'driploop-20261126.backup',
    '../driploop-20261126-054315-007-asked.backup',
    'driploop-20261126-054315-007-asked.backup.tmp',
  ])
    expect(readName(other)).toBeUndefined()
})

describe('of those made by themselves', () => {
  it('the last eight stay, and the newest of each of the last seven days', () => {
    // One every quarter of an hour for ten days, newest first; the newest is of noon.
    const all = Array.from({ length: 10 * 96 }, (_, index) => at(index * 15))
    const gone = new Set(outlived(all))
    const stay = all.filter((backup) => !gone.has(backup)).map(({ madeAt }) => madeAt.toISOString().slice(5, 16))
    expect(stay).toEqual([
      '11-26T12:00', '11-26T11:45', '11-26T11:30', '11-26T11:15', '11-26T11:00', '11-26T10:45', '11-26T10:30', '11-26T10:15',
      '11-25T23:45', '11-24T23:45', '11-23T23:45', '11-22T23:45', '11-21T23:45', '11-20T23:45',
    ]) // prettier-ignore
  })

  it('none makes room for one of another reason', () => {
    const rare = [at(50_000, 'asked'), at(60_000, 'before-upgrade')]
    const many = Array.from({ length: 50 }, (_, index) => at(index))
    expect(outlived([...many, ...rare]).some((backup) => rare.includes(backup))).toBe(false)
  })
})

it('keeps the last three from before an upgrade', () => {
  const all = Array.from({ length: 5 }, (_, index) => at(index * 100_000, 'before-upgrade'))
  expect(outlived(all)).toEqual(all.slice(3))
})
