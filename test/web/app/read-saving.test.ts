import { describe, expect, it } from 'vitest'
import { readSaving } from '../../../web/app/settings/read-saving.ts'

describe('the smallest saving worth waiting for', () => {
  it.each([
    ['5', 500],
    ['$ 2.50', 250],
    ['0', 0],
    ['', null],
  ])('reads "%s"', (text, minor) => expect(readSaving(text, 'USD', '.')).toEqual({ value: minor, fault: null }))

  it.each(['-3', '\u22123', 'three'])('speaks of the saving where it is "%s", never of a tariff', (text) => {
    const { value, fault } = readSaving(text, 'USD', '.')
    expect(value).toBeNull()
    expect(fault).toBe(`A saving of "${text}" cannot be waited for. Write 0 or more, like 5.00; 0 tells of any saving.`)
  })

  it('has the decimals of its currency, and the reader’s sign', () => {
    expect(readSaving('0.1734', 'USD', '.').fault).toBe('At most 2 decimals, like $19.99.')
    expect(readSaving('2,50', 'EUR', ',').value).toBe(250)
    expect(readSaving('-3', 'EUR', ',').fault).toContain('like 5,00')
  })
})
