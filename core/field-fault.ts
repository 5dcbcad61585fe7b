import type { ChoiceField, Field, NumberField } from './fields.ts'

/** Units that people write by habit in place of the unit of storage, with what one of them is in it. */
const HABITS: Record<string, ReadonlyArray<{ name: string; factor: number }>> = {
  mm: [
    { name: 'centimetres', factor: 10 },
    { name: 'inches', factor: 25.4 },
    { name: 'metres', factor: 1000 },
  ],
  L: [
    { name: 'US gallons', factor: 3.785411784 },
    { name: 'millilitres', factor: 0.001 },
  ],
  mL: [{ name: 'litres', factor: 1000 }],
  kg: [
    { name: 'pounds', factor: 0.45359237 },
    { name: 'grams', factor: 0.001 },
  ],
  g: [{ name: 'kilograms', factor: 1000 }],
  W: [{ name: 'kilowatts', factor: 1000 }],
  m: [{ name: 'millimetres', factor: 0.001 }],
  'L/h': [{ name: 'US gallons an hour', factor: 3.785411784 }],
}
/** Enough decimals for any entered figure, without the tail that binary floats bring. */
const plain = (value: number): string => String(Number(value.toPrecision(12)))

function habitHint(field: NumberField, value: number): string {
  const names = (HABITS[field.unitText] ?? [])
    .filter(({ factor }) => value * factor >= field.min && value * factor <= field.max)
    .map(({ name }) => name)
  if (names.length > 0) return `Was it in ${names.join(' or ')}?`
  if (field.unitText === '°C' && inRange(field, ((value - 32) * 5) / 9)) return 'Was it in °F?'
  return 'Check the figure and its unit.'
}
const inRange = (field: NumberField, value: number): boolean => value >= field.min && value <= field.max

/**
 * A number outside its field's limits, told with the limit and the likely fix.
 *
 * @example rangeWords(lengthMm, 5, 'a tank') // 'Length is 5 mm. For a tank it is between 100 and 4000 mm. Was it in inches?'
 */
export function rangeWords(field: NumberField, value: number, subject: string): string {
  const unit = field.unitText === '' ? '' : ` ${field.unitText}`
  return `${field.label} is ${plain(value)}${unit}. For ${subject} it is between ${plain(field.min)} and ${plain(field.max)}${unit}. ${habitHint(field, value)}`
}

/** Ids that a place's own rows are given. */
const OWN_ROW = /^own-[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/

/** Whether a value is one of a choice's options, or may be a row of the place's own where it takes them. */
export const isOption = (field: ChoiceField, value: unknown): boolean =>
  field.options.some((option) => option.value === value) || (field.open === true && typeof value === 'string' && OWN_ROW.test(value))

/** What a field wants, where it was given something of another kind or nothing at all. */
export function shapeWords(field: Field, value: unknown): string {
  if (value === undefined || value === null || value === '') {
    return field.required ? `${field.label} is missing. It is needed here.` : `${field.label} is empty. Leave it out where it is not known.`
  }
  if (field.type === 'flag') return `${field.label} is yes or no, true or false.`
  if (field.type === 'choice') {
    const own = field.open === true ? ', or the id of one of your own' : ''
    return `${field.label} is one of: ${field.options.map((option) => option.value).join(', ')}${own}.`
  }
  const unit = field.unitText === '' ? '' : ` of ${field.unitText}`
  return field.type === 'whole' ? `${field.label} is a whole number.` : `${field.label} is a plain number${unit}, without letters.`
}

/**
 * Why a value cannot stand in a field, in words; null where it can. Absent is allowed unless the field is required.
 *
 * `subject` is what the field describes, with its article: "a tank".
 */
export function fieldFault(field: Field, value: unknown, subject: string): string | null {
  if (value === undefined) return field.required ? shapeWords(field, value) : null
  if (field.type === 'flag') return typeof value === 'boolean' ? null : shapeWords(field, value)
  if (field.type === 'choice') return isOption(field, value) ? null : shapeWords(field, value)
  if (typeof value !== 'number' || !Number.isFinite(value)) return shapeWords(field, value)
  if (field.type === 'whole' && !Number.isInteger(value)) return shapeWords(field, value)
  return inRange(field, value) ? null : rangeWords(field, value, subject)
}
