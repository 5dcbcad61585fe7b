import * as z from 'zod'
import type { Reading } from '../quote/quote-view.ts'
import { civilDate, rowId, strict, text, yesNo } from '../schema.ts'

/** A figure read off a test kit; the highest colour step of any household kit is well below the limit. */
const mark = (label: string, unit: string, least: number, most: number) => {
  const range = {
    error: (issue: { input?: unknown }) =>
      `${label} is ${String(issue.input)}${unit}. It is between ${least} and ${most}${unit}. Read the test again.`,
  }
  return z
    .number({ error: `${label} is a plain number.` })
    .min(least, range)
    .max(most, range)
    .nullable()
    .default(null)
}

/** One water test. At least one figure: an empty test says nothing. Its id is made on the phone, so that a repeat is the same reading. */
export const ReadingInput = strict('Water test', {
  id: rowId('Id'),
  takenOn: civilDate('Day taken'),
  ammoniaMgL: mark('Ammonia', ' mg/L', 0, 50),
  nitriteMgL: mark('Nitrite', ' mg/L', 0, 50),
  nitrateMgL: mark('Nitrate', ' mg/L', 0, 500),
  ph: mark('pH', '', 3, 11),
  temperatureC: mark('Temperature', ' °C', -2, 45),
  note: text('Note', 0, 500).default(''),
}).refine(
  ({ ammoniaMgL, nitriteMgL, nitrateMgL, ph, temperatureC }) =>
    [ammoniaMgL, nitriteMgL, nitrateMgL, ph, temperatureC].some((value) => value !== null),
  {
    error: 'No figure is filled in. Enter at least one.',
  },
) satisfies z.ZodType<Reading>
export type ReadingInput = z.output<typeof ReadingInput>

export const TickInput = strict('Tick', { done: yesNo('Done') })
