import { phrase, stated, type Phrase, type Quantity } from '../units/quantity.ts'
import type { StartupSubject } from './startup-subject.ts'

/** A limit keeps a digit: 32 °C is 89.6 °F, and 90 °F would be past it. @example sayQuantity(limitC(32), US) // '89.6 °F' */
export const limitC = (celsius: number): Quantity => stated(celsius, 'degC', 1)

/** A thermometer's reading, alike wherever it is told: 60 °F that were typed stay 60.0 °F. @example sayQuantity(readC(15.5556), US) // '60.0 °F' */
export const readC = (celsius: number): Quantity => stated(celsius, 'degC', 1)

/** Without a heater nothing holds a target: the animals' own range is all that can be asked. */
export const isHeated = ({ gear }: StartupSubject): boolean => gear.heaters.length > 0

/** From the animals' lowest to their highest mark. @example sayPhrase(suitableRange(subject), METRIC) // '22.0 °C to 28.0 °C' */
export function suitableRange({ conditions }: StartupSubject): Phrase {
  const { lowestC, highestC } = conditions.livestock
  return phrase`${limitC(lowestC)} to ${limitC(highestC)}`
}

/** What the thermometer should show from day to day: the target where a heater holds it, the animals' range where none does. */
export const keptAt = (subject: StartupSubject): Phrase =>
  isHeated(subject) ? phrase`${stated(subject.conditions.livestock.targetC, 'degC', 0)}` : suitableRange(subject)
