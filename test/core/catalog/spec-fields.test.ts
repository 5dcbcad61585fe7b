import { describe, expect, it } from 'vitest'
import { fieldFault } from '../../../core/field-fault.ts'
import { KINDS, type Kind } from '../../../core/catalog/kinds.ts'
import { kindWords, SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'

const fault = (kind: Kind, key: string, value: unknown) => {
  const field = SPEC_FIELDS[kind].find((each) => each.key === key)
  if (!field) throw new Error(`No field ${key}`)
  return fieldFault(field, value, kindWords(kind))
}

describe('spec fields', () => {
  it.each(KINDS)('of a %s have distinct keys and limits in order', (kind) => {
    const fields = SPEC_FIELDS[kind]
    expect(new Set(fields.map(({ key }) => key)).size).toBe(fields.length)
    for (const field of fields) if ('min' in field) expect(field.min).toBeLessThan(field.max)
  })

  it.each([
    ['tank', 'lengthMm', 5, 'Length is 5 mm. For a tank it is between 100 and 4000 mm. Was it in inches?'],
    ['tank', 'lengthMm', 60, 'Length is 60 mm. For a tank it is between 100 and 4000 mm. Was it in centimetres or inches?'],
    ['heater', 'powerW', 40_000, 'Power is 40000 W. For a heater it is between 5 and 1000 W. Check the figure and its unit.'],
    ['heater', 'powerW', 0.3, 'Power is 0.3 W. For a heater it is between 5 and 1000 W. Was it in kilowatts?'],
    ['heater', 'powerW', -50, 'Power is -50 W. For a heater it is between 5 and 1000 W. Check the figure and its unit.'],
    ['heater', 'powerW', '150', 'Power is a plain number of W, without letters.'],
    ['heater', 'powerW', Number.NaN, 'Power is a plain number of W, without letters.'],
    ['heater', 'adjustable', 'yes', 'Adjustable is yes or no, true or false.'],
    ['tank', 'style', 'round', 'Style is one of: rimmed, rimless, braced.'],
    ['tank', 'lengthMm', undefined, 'Length is missing. It is needed here.'],
    ['power', 'outlets', 2.5, 'Outlets is a whole number.'],
  ] as const)('%s.%s refuses %s in words that name limit and fix', (kind, key, value, words) => {
    expect(fault(kind, key, value)).toBe(words)
  })

  it.each([
    ['tank', 'lengthMm', 900],
    ['heater', 'powerW', 150],
    ['heater', 'powerW', undefined],
    ['ammonia_source', 'strength', 0.1],
    ['thermometer', 'alarm', false],
  ] as const)('%s.%s takes %s', (kind, key, value) => {
    expect(fault(kind, key, value)).toBeNull()
  })
})
