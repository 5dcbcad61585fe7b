import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { faultFileName } from '../../../core/exchange/fault-file-name.ts'

const DAY = '2026-11-30'
const named = (fileName: string): string => faultFileName({ fileName, set: 'price_list' }, DAY)

describe('a fault file', () => {
  it.each([
    ['heaters.csv', 'heaters-faults-2026-11-30'],
    ['Heaters (spring 2026).CSV', 'Heaters-spring-2026-faults-2026-11-30'],
    ['Größen.json', 'Größen-faults-2026-11-30'],
    ['水槽.csv', '水槽-faults-2026-11-30'],
    ['../../etc/passwd', 'etc-passwd-faults-2026-11-30'],
    ['C:\\lists\\all.csv', 'C-lists-all-faults-2026-11-30'],
    ['.hidden.csv', 'hidden-faults-2026-11-30'],
    ['-rf.csv', 'rf-faults-2026-11-30'],
    ['a"; filename="b.exe', 'a-filename-b.exe-faults-2026-11-30'],
    ['prices\u202Evsc.exe', 'prices-vsc.exe-faults-2026-11-30'],
    ['', 'price-list-faults-2026-11-30'],
    ['🐟.csv', 'price-list-faults-2026-11-30'],
  ])('of %j is called %s', (fileName, name) => expect(named(fileName)).toBe(name))

  it('has room for its ending where each letter takes four bytes', () => {
    const name = `${named('𠮷'.repeat(200))}.csv`
    expect(name).toMatch(/^(?:𠮷)+-faults-2026-11-30\.csv$/u)
    expect(Buffer.byteLength(name)).toBeLessThanOrEqual(255)
  })

  it('has a name that every file system takes, whatever the file was called', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (fileName) => {
        const name = `${named(fileName)}.csv`
        expect(name).toMatch(/^[\p{L}\p{N}][\p{L}\p{M}\p{N}._-]*-faults-2026-11-30\.csv$/u)
        expect(new TextEncoder().encode(name).length).toBeLessThanOrEqual(255)
      }),
    )
  })
})
