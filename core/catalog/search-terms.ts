import { COMMON_SIZES, type CommonSize } from './common-sizes.ts'
import { slipsBetween, slipsForgiven } from './near-words.ts'

/** One thing that is looked for. */
export interface SearchTerm {
  /** Lower case, without accents: "100w", "heter". */
  text: string
  /** A figure and its unit that also do apart: "100" and "w". Empty for a single word. */
  parts: string[]
  /** A side in whole inches or centimetres that the figure may mean; null for a word or a longer number. */
  side: string | null
  /** A number of a barcode, or a part of one. */
  isNumber: boolean
}

/** Digits that long are meant as a product's number; fewer are in nearly every one. */
const NUMBER_DIGITS = 4
const JOINED: Record<string, string> = { ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', ł: 'l', đ: 'd', ð: 'd' }

/** Text without case, accents and joined letters, as the database folds it. @example foldText('Crème 90') // 'creme 90' */
export const foldText = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/[ßæœøłđð]/g, (sign) => JOINED[sign] ?? sign)

const SIDE_UNITS = new Set(['cm', 'in', '"', '″'])

function termOf(figure: string, unit: string): SearchTerm {
  const short = figure.length < NUMBER_DIGITS
  return {
    text: unit === '"' || unit === '″' ? `${figure}in` : `${figure}${unit}`,
    parts: unit === '' ? [] : [figure, unit],
    side: short && (unit === '' || SIDE_UNITS.has(unit)) ? figure : null,
    isNumber: !short && unit === '',
  }
}

/**
 * What a line of search text asks for; a figure and the unit behind it are one thing.
 *
 * @example searchTerms('heter 100 W').map(({ text }) => text) // ['heter', '100w']
 */
export function searchTerms(typed: string): SearchTerm[] {
  const words = foldText(typed).split(/\s+/).filter(Boolean)
  const terms: SearchTerm[] = []
  for (let at = 0; at < words.length; at += 1) {
    const word = words[at] ?? ''
    const attached = /^(\d+)([a-z]{1,3}|"|″)$/.exec(word)
    const next = words[at + 1] ?? ''
    if (attached) terms.push(termOf(attached[1] ?? '', attached[2] ?? ''))
    else if (/^\d+$/.test(word) && /^(?:cm|in|mm|w|l|ml|kg|g|lb|gal|"|″)$/.test(next)) {
      terms.push(termOf(word, next))
      at += 1
    } else if (/^\d+$/.test(word)) terms.push(termOf(word, ''))
    else terms.push({ text: word, parts: [], side: null, isNumber: false })
  }
  return terms
}

/** A size of the trade that was called by its name, and which of the terms name it. */
export interface NamedSize {
  size: CommonSize
  from: number
  count: number
}

const isMeant = (typed: string, word: string): boolean => typed === word || slipsBetween(typed, word) <= slipsForgiven(typed)

/**
 * The common size that some terms in a row name, its words with a slip forgiven; the longest name wins.
 *
 * @example namedSize(searchTerms('rimless 20 longg'))?.size.id // 'us-20-long'
 */
export function namedSize(terms: readonly SearchTerm[]): NamedSize | undefined {
  const named = COMMON_SIZES.flatMap((size): NamedSize[] => {
    const label = searchTerms(size.label)
    const from = terms.findIndex((_, start) => label.every((word, at) => isMeant(terms[start + at]?.text ?? '', word.text)))
    return from < 0 ? [] : [{ size, from, count: label.length }]
  })
  return named.toSorted((a, b) => b.count - a.count)[0]
}
