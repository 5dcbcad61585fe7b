import { describe, expect, it } from 'vitest'
import { fc, test } from '@fast-check/vitest'
import { US } from '../../../core/units/say.ts'
import { readFigure, readMoney, spellFigure, spellMoney, type FigureLimits } from '../../../web/app/parts/figure.ts'
import { followEntry, leaveEntry, openEntry, typeEntry, type Reading } from '../../../web/app/parts/typed-entry.ts'

/** A form that takes what a field tells it, and the field in it, driven key by key as a person does. Own harness. */
function fieldIn(start: number | null, read: (text: string) => Reading<number>, spell: (value: number | null) => string) {
  let value = start
  let entry = openEntry(value, spell)
  const follow = (): void => void (entry = followEntry(entry, value, spell))
  return {
    clear: (): void => void (entry = typeEntry(entry, '')),
    key: (character: string): void => {
      entry = typeEntry(entry, entry.text + character)
      follow()
    },
    leave: (): string | null => {
      const left = leaveEntry(entry, read, spell)
      entry = left.entry
      if (left.reading && left.reading.fault === null) value = left.reading.value
      follow()
      return left.reading?.fault ?? null
    },
    give: (next: number | null): void => {
      value = next
      follow()
    },
    now: () => ({ text: entry.text, value }),
  }
}
const quantity = (limits: FigureLimits, start: number | null) =>
  fieldIn(start, (text) => readFigure(text, limits, US), (value) => spellFigure(value, limits, US)) // prettier-ignore
const type = (field: ReturnType<typeof fieldIn>, text: string): void => {
  field.clear()
  for (const character of text) field.key(character)
}
const room: FigureLimits = { label: 'Coldest', unit: 'degC', min: -5, max: 35 }
const depth: FigureLimits = { label: 'Substrate depth', unit: 'mm', min: 0, max: 300 }
const outlet: FigureLimits = { label: 'Outlet distance', unit: 'mm', min: 0, max: 10_000 }
const many: FigureLimits = { label: 'How many', unit: 'count', whole: true, min: 1, max: 999 }
/** 62 °F, by the definition of the scale: (F − 32) / 1.8. */
const C_OF_62F = (62 - 32) / 1.8

describe('a figure typed key by key', () => {
  it('is what was typed, not what its first keys would have meant', () => {
    const substrate = quantity(depth, null)
    type(substrate, '6 cm')
    expect(substrate.leave()).toBeNull()
    expect(substrate.now().value).toBe(60)
    const distance = quantity(outlet, 76.2)
    type(distance, '3 ft')
    expect(distance.leave()).toBeNull()
    expect(distance.now().value).toBeCloseTo(914.4)
  })
  it('takes the place of the one that stood there', () => {
    const coldest = quantity(room, C_OF_62F)
    type(coldest, '58')
    expect(coldest.now().text).toBe('58')
    coldest.leave()
    expect(coldest.now().value).toBeCloseTo((58 - 32) / 1.8, 5)
    expect(coldest.now().text).toBe('58')
  })
  it.each([['-3', /^How many is -3\. The least is 1\./], ['1,000', /two ways/], ['2.5', /whole number/], ['1000', /^How many is 1000\. The most is 999\./]] as const)('that is refused stays as it was typed, %s, and the value what it was', (text, fault) => {
    const field = quantity(many, 4)
    type(field, text)
    expect(field.leave()).toMatch(fault)
    expect(field.now()).toEqual({ text, value: 4 })
  }) // prettier-ignore
  it('keeps an amount that can be read two ways, and the budget with it', () => {
    const budget = fieldIn(60_000, (text) => readMoney(text, 'USD', 'How much money', 1), (minor) => spellMoney(minor, 'USD')) // prettier-ignore
    type(budget, '1.234')
    expect(budget.now()).toEqual({ text: '1.234', value: 60_000 })
    expect(budget.leave()).toMatch(/two ways/)
    expect(budget.now()).toEqual({ text: '1.234', value: 60_000 })
    type(budget, '2,500')
    expect(budget.leave()).toBeNull()
    expect(budget.now()).toEqual({ text: '2500.00', value: 250_000 })
  })
  it('is given up for a value that came from elsewhere, but not while it is typed in', () => {
    const field = quantity(many, 4)
    field.give(6)
    expect(field.now().text).toBe('6')
    type(field, '1')
    field.give(8)
    expect(field.now().text).toBe('1')
    field.leave()
    expect(field.now()).toEqual({ text: '1', value: 1 })
  })
  it('that was only passed through changes nothing, to the last digit', () => {
    const field = quantity(room, C_OF_62F)
    expect(field.leave()).toBeNull()
    expect(field.now().value).toBe(C_OF_62F)
  })
  test.prop([fc.string({ maxLength: 12 }), fc.integer({ min: 1, max: 999 })])('never changes while it is typed', (text, start) => {
    const field = quantity(many, start)
    type(field, text)
    expect(field.now()).toEqual({ text, value: start })
    const fault = field.leave()
    if (fault !== null) expect(field.now()).toEqual({ text, value: start })
  })
})
