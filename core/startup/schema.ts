import * as z from 'zod'
import type { Reading } from '../quote/quote-view.ts'
import { quantity, type ReaderUnits } from '../units/quantity.ts'
import { measuredIn } from '../units/reader.ts'
import { METRIC, sayQuantity } from '../units/say.ts'
import { civilDate, rowId, strict, text, yesNo } from '../schema.ts'

/** A figure as a refusal repeats it: places nobody typed are left out. */
const asTyped = (value: unknown): string => String(typeof value === 'number' ? Number(value.toFixed(4)) : value)

/** A figure read off a test kit; the highest colour step of any household kit is well below the limit. */
const mark = (label: string, unit: string, least: number, most: number) =>
  between(
    label,
    least,
    most,
    (value) => `${label} is ${asTyped(value)}${unit}. It is between ${least} and ${most}${unit}. Read the test again.`,
  )

/** The water's temperature, refused in the unit it was read in: who sees 77 °F on the glass never wrote 25 °C. */
const temperature = (units: ReaderUnits) => {
  const [least, most] = [-2, 45]
  const say = (celsius: number): string => sayQuantity(quantity(celsius, 'degC', 1), units)
  const other = measuredIn(units).temperature === 'F' ? '25 °C' : '77 °F'
  return between(
    'Temperature',
    least,
    most,
    (value) =>
      `Temperature is ${typeof value === 'number' ? say(value) : String(value)}. It is between ${say(least)} and ${say(most)}. Read it again; from a thermometer with the other scale write its unit too, like ${other}.`,
  )
}

/** Carbonate hardness, refused as the reader's kit counts it. */
const hardness = (units: ReaderUnits) => {
  if (measuredIn(units).hardness === 'dKH') return mark('KH', ' degrees', 0, 40)
  const say = (degrees: number): string => sayQuantity(quantity(degrees, 'dKH', 1), units)
  return between(
    'KH',
    0,
    40,
    (value) =>
      `KH is ${typeof value === 'number' ? say(value) : String(value)}. It is between ${say(0)} and ${say(40)}. Read the test again.`,
  )
}

function between(label: string, least: number, most: number, words: (value: unknown) => string) {
  const range = { error: (issue: { input?: unknown }) => words(issue.input) }
  return z
    .number({ error: `${label} is a plain number.` })
    .min(least, range)
    .max(most, range)
    .nullable()
    .default(null)
}

/**
 * One water test, refused in a reader's units. At least one figure: an empty test says nothing. Its id is made on the phone, so that a repeat is
 * the same reading.
 *
 * @example readingInput(US).safeParse({ …, temperatureC: -3.9 }) // 'Temperature is 25.0 °F. It is between 28.4 °F and 113.0 °F. …'
 */
export const readingInput = (units: ReaderUnits) =>
  strict('Water test', {
    id: rowId('Id'),
    takenOn: civilDate('Day taken'),
    ammoniaMgL: mark('Ammonia', ' mg/L', 0, 50),
    nitriteMgL: mark('Nitrite', ' mg/L', 0, 50),
    nitrateMgL: mark('Nitrate', ' mg/L', 0, 500),
    ph: mark('pH', '', 3, 11),
    khDegrees: hardness(units),
    temperatureC: temperature(units),
    note: text('Note', 0, 500).default(''),
  }).refine(
    ({ ammoniaMgL, nitriteMgL, nitrateMgL, ph, khDegrees, temperatureC }) =>
      [ammoniaMgL, nitriteMgL, nitrateMgL, ph, khDegrees, temperatureC].some((value) => value !== null),
    {
      error: 'No figure is filled in. Enter at least one.',
    },
  ) satisfies z.ZodType<Reading>
export const ReadingInput = readingInput(METRIC)
export type ReadingInput = z.output<typeof ReadingInput>

/**
 * `tested` is the word of whoever ticks a step that the log does not bear out; it does not stand against a newer reading that says otherwise. `on` is the
 * day on which it was done, today where it is left out.
 */
export const TickInput = strict('Tick', {
  done: yesNo('Done'),
  tested: yesNo('Tested').default(false),
  on: civilDate('Day done').optional(),
})
