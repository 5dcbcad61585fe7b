import { fine, quantity, stated, type Phrase, type Quantity } from '../units/quantity.ts'
import type { ExplainedInput } from './explanation.ts'

/** A row of what was reckoned. @example line('Runs down', phrase`…`).from // 'reckoned' */
export const line = (name: string, value: Phrase): ExplainedInput => ({ name, value, from: 'reckoned' })

/** What a double loses. */
const SLACK = 1e-12

/** A number without a unit, or with one that is the same for everybody, without noughts behind it. @example plain(0.5, 4) // 0.5, to one digit */
export function plain(value: number, digits: number): Quantity {
  const whole = Array.from({ length: digits }, (_, index) => index).find(
    (few) => Math.abs(quantity(value, 'count', few).value - value) <= SLACK * Math.abs(value),
  )
  return quantity(value, 'count', whole ?? digits)
}

/** A weight or a volume to reckon with, in the reader's unit. @example exact(57.28, 'kg', 1) // 126.3 lb to a reader in the United States */
export const exact = (value: number, unit: 'kg' | 'L' | 'L/h', digits: number): Quantity => fine(stated(value, unit, digits))

/** What one of the last digit is. @example lastDigitOf(1) // 0.1 */
export const lastDigitOf = (digits: number): number => 10 ** -digits
