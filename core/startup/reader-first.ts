import type { Phrase, ReaderUnits } from '../units/quantity.ts'
import { measuredIn } from '../units/reader.ts'

/** "20 kg (44 lb)", "1 to 2 mm (1/16 in)": a metric figure with its own beside it. */
const BESIDE: ReadonlyArray<[of: 'mass' | 'length', pattern: RegExp]> = [
  ['mass', /(\d[\d.]*(?: to [\d.]+)? kg) \(([^)]+ lb)\)/g],
  ['length', /(\d[\d.]*(?: to [\d.]+)? (?:cm|mm)) \(([^)]+ (?:ft|in))\)/g],
]

/**
 * A sentence that tells a figure both ways, with the reader's own unit first. The fixed words of cautions and tolerances are kept metric first.
 *
 * Errors: none; a sentence without such a figure stays as it is.
 *
 * @example readerFirst('from 20 kg (44 lb) on', US) // 'from 44 lb (20 kg) on'
 */
export function readerFirst(text: string, units: ReaderUnits): string {
  const told = measuredIn(units)
  return BESIDE.reduce(
    (said, [of, pattern]) => (told[of] === (of === 'mass' ? 'lb' : 'in') ? said.replace(pattern, '$2 ($1)') : said),
    text,
  )
}

/** The same for a phrase, whose quantities are told in the reader's units anyway. */
export const phraseReaderFirst = (phrase: Phrase, units: ReaderUnits): Phrase =>
  phrase.map((part) => (typeof part === 'string' ? readerFirst(part, units) : part))
