import type { Unit } from './units/quantity.ts'

/**
 * One figure, choice or flag that a person enters, with the limits that refuse the absurd. Forms, CSV import and the validators of the
 * schema.ts files all read these rows, so that a limit exists once. Numbers are in the unit of storage; a form shows the reader's.
 */
export interface FieldBase<Key extends string = string, Required extends boolean = boolean> {
  key: Key
  label: string
  required: Required
  /** One line under the field: what is meant, where to read it off. */
  help: string
}
export interface NumberField<Key extends string = string, Required extends boolean = boolean> extends FieldBase<Key, Required> {
  type: 'number' | 'whole'
  /** Absent where the core has no unit for it: then `unitText` says it. */
  unit?: Unit
  unitText: string
  min: number
  max: number
}
export interface ChoiceField<
  Key extends string = string,
  Value extends string = string,
  Required extends boolean = boolean,
> extends FieldBase<Key, Required> {
  type: 'choice'
  options: ReadonlyArray<{ value: Value; label: string }>
  /** True where a place has options of its own beside these: a row of theirs is looked up where the field is stored. */
  open?: true
}
export interface FlagField<Key extends string = string, Required extends boolean = boolean> extends FieldBase<Key, Required> {
  type: 'flag'
}
export type Field = NumberField | ChoiceField | FlagField

/** The plain value that a field holds. */
type ValueOf<F> = F extends { type: 'number' | 'whole' } ? number : F extends { options: ReadonlyArray<{ value: infer V }> } ? V : boolean
type RequiredOf<F> = F extends { required: true } ? F : never
type OptionalOf<F> = F extends { required: true } ? never : F
/** The object that a list of fields describes: the type-level twin of the table, compared with the contract types. */
export type FieldsObject<Fields extends readonly Field[]> = {
  [F in RequiredOf<Fields[number]> as F['key']]: ValueOf<F>
} & { [F in OptionalOf<Fields[number]> as F['key']]?: ValueOf<F> }

/** What is typed where the unit of storage has a spoken name. */
const UNIT_TEXT: Partial<Record<Unit, string>> = {
  degC: '°C',
  count: '',
  per_hour: 'per hour',
  share: '',
  percent: '%',
}
export const unitText = (unit: Unit): string => UNIT_TEXT[unit] ?? unit

interface NumberOptions {
  help?: string
  whole?: boolean
  /** For a unit that the core does not convert. */
  unitText?: string
}

/** An optional number within limits. @example number('powerW', 'Power', 'W', 5, 1000) */
export function number<const Key extends string>(
  key: Key,
  label: string,
  unit: Unit | null,
  min: number,
  max: number,
  options: NumberOptions = {},
): NumberField<Key, false> {
  return {
    key,
    label,
    type: options.whole ? 'whole' : 'number',
    ...(unit ? { unit } : {}),
    unitText: options.unitText ?? (unit ? unitText(unit) : ''),
    min,
    max,
    required: false,
    help: options.help ?? '',
  }
}

/** An optional choice. @example choice('top', 'Top', { full: 'Full board', perimeter: 'Frame under the edge' }) */
export function choice<const Key extends string, const Labels extends Record<string, string>>(
  key: Key,
  label: string,
  labels: Labels,
  help = '',
): ChoiceField<Key, keyof Labels & string, false> {
  const options = Object.entries(labels).map(([value, text]) => ({ value, label: text }))
  return { key, label, type: 'choice', options, required: false, help }
}

/** A choice among what comes with the service and what a place adds to it. */
export const openChoice = <const Key extends string>(
  key: Key,
  label: string,
  labels: Record<string, string>,
  help = '',
): ChoiceField<Key, string, false> => ({ ...choice(key, label, labels, help), open: true })

/** An optional yes or no; absent is "not known". */
export const flag = <const Key extends string>(key: Key, label: string, help = ''): FlagField<Key, false> => ({
  key,
  label,
  type: 'flag',
  required: false,
  help,
})

/** The same field, required. */
export const required = <F extends Field>(field: F): Omit<F, 'required'> & { required: true } => ({ ...field, required: true })
