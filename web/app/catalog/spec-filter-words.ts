import type { Kind } from '../../../core/catalog/kinds.ts'
import { SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'
import type { SpecTest } from '../../../core/catalog/spec-filter.ts'
import { optionsAt } from '../../../core/catalog/fields-at.ts'
import type { Install } from '../../../core/install.ts'
import type { Field } from '../../../core/fields.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { sayNumber, sayQuantity } from '../../../core/units/say.ts'

const DIGITS = 2

function sayFigure(field: Field, value: number, reader: ReaderUnits): string {
  const digits = Number.isInteger(value) ? 0 : DIGITS
  if ('unit' in field && field.unit) return sayQuantity({ value, unit: field.unit, digits }, reader)
  return sayNumber(value, digits, reader)
}

type Place = Pick<Install, 'livestock'>

function sayTest(field: Field, test: SpecTest, reader: ReaderUnits, place: Place): string {
  if ('is' in test) {
    if (field.type === 'choice')
      return `${field.label}: ${
        optionsAt(field, place)
          .find(({ value }) => value === test.is)
          ?.label.toLowerCase() ?? ''
      }`
    return `${field.label}: ${test.is === true ? 'yes' : 'no'}`
  }
  const { least, most } = test
  if (least !== null && most !== null) return `${field.label} ${sayFigure(field, least, reader)} to ${sayFigure(field, most, reader)}`
  if (least !== null) return `${field.label} at least ${sayFigure(field, least, reader)}`
  return `${field.label} at most ${sayFigure(field, most ?? 0, reader)}`
}

/**
 * What a filter asks, in words of the reader's units.
 *
 * @example sayTests('heater', [{ key: 'powerW', least: 100, most: null }], METRIC, {}) // 'Power at least 100 W'
 */
export const sayTests = (kind: Kind, tests: readonly SpecTest[], reader: ReaderUnits, place: Place): string =>
  tests
    .flatMap((test) => {
      const field = SPEC_FIELDS[kind].find(({ key }) => key === test.key)
      return field ? [sayTest(field, test, reader, place)] : []
    })
    .join(' · ')
