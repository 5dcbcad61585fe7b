import { fieldFault, isOption, shapeWords } from '../field-fault.ts'
import type { Field } from '../fields.ts'
import { ok, refuse, type Result } from '../result.ts'
import type { Kind } from './kinds.ts'
import { kindWords, SPEC_FIELDS } from './spec-fields.ts'

/** What a product's stated spec must be: a figure within bounds, one word of a choice, or a yes or no. What nobody stated meets none. */
export type SpecTest = { key: string; least: number | null; most: number | null } | { key: string; is: string | boolean }

export type SpecFilterRefusal = {
  code: 'no_kind' | 'unknown_field' | 'not_a_value' | 'out_of_range' | 'turned_round' | 'twice'
  words: string
}

const YES_NO: ReadonlyMap<string, boolean> = new Map([
  ['yes', true],
  ['no', false],
])
/** Plain decimals as the storage unit has them: no thousands, no exponents. */
const DECIMAL = /^-?\d+(?:\.\d+)?$/

const bound = (text: string): number | null | undefined => (text === '' ? null : DECIMAL.test(text) ? Number(text) : undefined)

type Reading = Result<SpecTest, SpecFilterRefusal>
const notAValue = (words: string): Reading => refuse({ code: 'not_a_value', words })

function readRange(field: Extract<Field, { type: 'number' | 'whole' }>, text: string, kind: Kind): Reading {
  const ends = text.split('..')
  const [least, most] = ends.map(bound)
  if (ends.length !== 2 || least === undefined || most === undefined || (least === null && most === null))
    return notAValue(`${field.label} is a range, like ${field.key}:${field.min}..${field.max}; one end may be left out.`)
  for (const end of [least, most]) {
    const fault = end === null ? null : fieldFault(field, end, kindWords(kind))
    if (fault !== null) return refuse({ code: 'out_of_range', words: fault })
  }
  if (least !== null && most !== null && least > most)
    return refuse({ code: 'turned_round', words: `${field.label} is at least ${least} and at most ${most}: nothing is both. Swap them.` })
  return ok({ key: field.key, least, most })
}

function readTest(kind: Kind, text: string): Reading {
  const [key = '', ...rest] = text.split(':')
  const value = rest.join(':')
  const field = SPEC_FIELDS[kind].find((known) => known.key === key)
  if (field === undefined) {
    const known = SPEC_FIELDS[kind].map((one) => one.key).join(', ')
    const words = `"${key.slice(0, 40)}" is nothing that ${kindWords(kind)} states. ${known === '' ? 'It states nothing.' : `It states: ${known}.`}`
    return refuse({ code: 'unknown_field', words })
  }
  if (field.type === 'flag') {
    const is = YES_NO.get(value)
    return is === undefined ? notAValue(`${field.label} is yes or no, like ${key}:yes.`) : ok({ key, is })
  }
  if (field.type === 'choice') return isOption(field, value) ? ok({ key, is: value }) : notAValue(shapeWords(field, value))
  return readRange(field, value, kind)
}

/**
 * Reads a filter by what products of a kind state, as it stands in an address.
 *
 * Units: those of storage. Errors: no kind, a field the kind has not, a value the field cannot have, an empty range, a field named twice.
 *
 * @example parseSpecFilter('tank', 'lengthMm:800..1000,style:rimless')
 * // [{ key: 'lengthMm', least: 800, most: 1000 }, { key: 'style', is: 'rimless' }]
 */
export function parseSpecFilter(kind: Kind | undefined, text: string): Result<SpecTest[], SpecFilterRefusal> {
  if (text.trim() === '') return ok([])
  if (kind === undefined) return refuse({ code: 'no_kind', words: 'Say the kind as well: what a product states depends on its kind.' })
  const tests: SpecTest[] = []
  for (const part of text.split(',')) {
    const test = readTest(kind, part.trim())
    if (!test.ok) return test
    if (tests.some(({ key }) => key === test.value.key))
      return refuse({ code: 'twice', words: `"${test.value.key}" is named twice. Name it once, with both ends of its range.` })
    tests.push(test.value)
  }
  return ok(tests)
}

const spellTest = (test: SpecTest): string =>
  'is' in test
    ? `${test.key}:${typeof test.is === 'boolean' ? (test.is ? 'yes' : 'no') : test.is}`
    : `${test.key}:${test.least ?? ''}..${test.most ?? ''}`

/** The filter as it stands in an address. @example spellSpecFilter([{ key: 'powerW', least: 100, most: null }]) // 'powerW:100..' */
export const spellSpecFilter = (tests: readonly SpecTest[]): string => tests.map(spellTest).join(',')

/** The tests with one in place of whatever was asked of its field before; `null` asks nothing of it any more. */
export function withTest(tests: readonly SpecTest[], key: string, test: SpecTest | null): SpecTest[] {
  const others = tests.filter((one) => one.key !== key)
  return test === null ? others : [...others, test]
}
