import type { Product } from '../../../core/catalog/product.ts'
import { SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'
import { optionsAt } from '../../../core/catalog/fields-at.ts'
import type { Install } from '../../../core/install.ts'
import type { Field } from '../../../core/fields.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { sayNumber, sayQuantity } from '../../../core/units/say.ts'

/** Decimals a stated figure keeps: makers print no more than two. */
const DIGITS = 2

/** A label inside a sentence. @example spoken('Measures pH') // 'measures pH' */
const spoken = (label: string): string => label.charAt(0).toLowerCase() + label.slice(1)

type Place = Pick<Install, 'livestock'>

function sayField(field: Field, value: unknown, reader: ReaderUnits, place: Place): string | null {
  if (field.type === 'flag') return typeof value === 'boolean' ? `${spoken(field.label)}: ${value ? 'yes' : 'no'}` : null
  if (field.type === 'choice') {
    const option = optionsAt(field, place).find((known) => known.value === value)
    return option ? spoken(option.label) : null
  }
  if (typeof value !== 'number') return null
  const digits = Number.isInteger(value) ? 0 : DIGITS
  const figure = field.unit
    ? sayQuantity({ value, unit: field.unit, digits }, reader)
    : `${sayNumber(value, digits, reader)} ${field.unitText}`
  return `${spoken(field.label)} ${figure}`
}

/** What the maker states, in the order of the form: "canister", "rated flow 475 gal/h". What nobody entered is left out. */
export function specWords(product: Product, reader: ReaderUnits, place: Place): string[] {
  const spec = product.spec as Record<string, unknown>
  return SPEC_FIELDS[product.kind].flatMap((field) => sayField(field, spec[field.key], reader, place) ?? [])
}
