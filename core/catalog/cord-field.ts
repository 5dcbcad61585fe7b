import { number } from '../fields.ts'

/** Cord of anything that is plugged in; one row for every kind, so that limits and help are the same. */
export const CORD_FIELD = number('cordMm', 'Cord length', 'mm', 100, 10_000, {
  help: 'From the appliance to the plug. Decides whether a drip loop is possible.',
})
