import { COMMON_SIZES, sizeCalled, type CommonSize } from '../../../core/catalog/common-sizes.ts'
import type { Need } from '../../../core/quote/need.ts'
import { parseQuantity } from '../../../core/units/parse.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { sayLength } from '../../../core/units/say.ts'
import { sizesByVolume, type SizesByVolume } from './size-by-volume.ts'

type Size = Pick<Need, 'lengthMm' | 'commonSizeId'>
/** `choices` are the sizes that a refused text may mean. */
export type SizeAnswer = { size: Size; fault: null } | { size: null; fault: string; choices?: CommonSize[] }

/** The catalog's own limits for a tank: a wish outside them can never be met. */
const SHORTEST_MM = 100
const LONGEST_MM = 4000

/**
 * Reads the answer to "how big": a common size's name, or a volume that one of them is called by, or a length with or without a unit; nothing is an answer still open.
 *
 * @example readSize('20 long', US) // { size: { lengthMm: null, commonSizeId: 'us-20-long' }, fault: null }
 * @example readSize('36', US) // { size: { lengthMm: 914.4, commonSizeId: null }, fault: null }
 */
export function readSize(text: string, reader: ReaderUnits): SizeAnswer {
  if (text.trim() === '') return { size: { lengthMm: null, commonSizeId: null }, fault: null }
  const named = sizeCalled(text)
  if (named) return { size: { lengthMm: null, commonSizeId: named.id }, fault: null }
  const called = sizesByVolume(text, reader)
  if (called) return answerOf(called)
  const read = parseQuantity(text, 'mm', reader)
  if (!read.ok) return { size: null, fault: `${read.refusal.words} A length or a common size is understood, like 36 in, 90 cm or 20 long.` }
  const lengthMm = Math.round(read.value * 10) / 10
  if (lengthMm < SHORTEST_MM || lengthMm > LONGEST_MM) {
    const [least, most] = [sayLength(SHORTEST_MM, reader), sayLength(LONGEST_MM, reader)]
    return {
      size: null,
      fault: `Length is ${sayLength(lengthMm, reader)}. A tank is between ${least} and ${most} long. Was it another unit?`,
    }
  }
  return { size: { lengthMm, commonSizeId: null }, fault: null }
}

function answerOf({ sizes, sure }: SizesByVolume): SizeAnswer {
  const [first] = sizes
  if (first && sure) return { size: { lengthMm: null, commonSizeId: first.id }, fault: null }
  const names = new Intl.ListFormat('en', { type: 'disjunction' }).format(sizes.map(({ label }) => label))
  return { size: null, fault: `Which one: ${names}?`, choices: sizes }
}

/** The answer as its field shows it. */
export function spellSize({ lengthMm, commonSizeId }: Size, reader: ReaderUnits): string {
  const named = COMMON_SIZES.find((size) => size.id === commonSizeId)
  return named?.label ?? (lengthMm === null ? '' : sayLength(lengthMm, reader))
}
