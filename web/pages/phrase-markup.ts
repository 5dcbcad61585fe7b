import type { Phrase, ReaderUnits } from '../../core/units/quantity.ts'
import { sayQuantity } from '../../core/units/say.ts'
import { markup, type Markup } from './markup.ts'

/** A sentence in the reader's units with its figures strong, so that an amount is found at a glance. */
export const phraseMarkup = (phrase: Phrase, units: ReaderUnits): Markup =>
  markup`${phrase.map((part) => (typeof part === 'string' ? part : markup`<b>${sayQuantity(part, units)}</b>`))}`
