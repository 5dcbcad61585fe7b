/** Slips that are forgiven: none in a word too short to tell a slip from another word, one in most, two in a long one. */
const ONE_SLIP_FROM = 4
const TWO_SLIPS_FROM = 8

/** How many slips a word of this length is forgiven. @example slipsForgiven('heter') // 1 */
export const slipsForgiven = (word: string): number => (word.length >= TWO_SLIPS_FROM ? 2 : word.length >= ONE_SLIP_FROM ? 1 : 0)

/** What comes after the end of a word: a start of it is meant while somebody types. */
const UNFINISHED = 0.5

/** A catalog of 20 000 products has a few hundred words that share a piece with a given one; a dozen of them at most were meant. */
const MOST_NEAR = 12

const digitsOf = (word: string): string => word.replace(/\D/g, '')

/**
 * Slips between two words: a letter wrong, missing, too many, or two neighbours swapped. A start of the second word costs half a slip more than the
 * whole of it. Infinite where their figures differ: "c-1800" is no slip of "c-1200".
 *
 * Source: optimal string alignment, Damerau (1964) with the restriction of no edit between swapped letters.
 *
 * @example slipsBetween('heter', 'heater') // 1
 * @example slipsBetween('cansiter', 'canister') // 1
 * @example slipsBetween('heaetr', 'heater100') // Infinity
 */
export function slipsBetween(typed: string, word: string): number {
  if (digitsOf(typed) !== digitsOf(word)) return Infinity
  let before: number[] = []
  let last = Array.from({ length: word.length + 1 }, (_, index) => index)
  for (let row = 1; row <= typed.length; row += 1) {
    const here = [row]
    for (let column = 1; column <= word.length; column += 1) {
      const same = typed[row - 1] === word[column - 1]
      const swapped = row > 1 && column > 1 && typed[row - 1] === word[column - 2] && typed[row - 2] === word[column - 1]
      here[column] = Math.min(
        (last[column] ?? 0) + 1,
        (here[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + (same ? 0 : 1),
        swapped ? (before[column - 2] ?? 0) + 1 : Infinity,
      )
    }
    before = last
    last = here
  }
  return Math.min(last[word.length] ?? Infinity, Math.min(...last) + UNFINISHED)
}

export interface NearWord {
  word: string
  /** 0.5 to 2.5; a start of a word counts half a slip. */
  slips: number
}

/**
 * Words that may have been meant by a misspelt one, nearest first.
 *
 * Range: none for words under four letters. Source: own limits.
 *
 * @example nearWords('heter', ['heater', 'filter']) // [{ word: 'heater', slips: 1 }]
 */
export function nearWords(typed: string, known: readonly string[]): NearWord[] {
  const forgiven = slipsForgiven(typed)
  if (forgiven === 0) return []
  return known
    .map((word) => ({ word, slips: slipsBetween(typed, word) }))
    .filter(({ slips }) => slips <= forgiven + UNFINISHED)
    .toSorted((a, b) => a.slips - b.slips || a.word.length - b.word.length || (a.word < b.word ? -1 : 1))
    .slice(0, MOST_NEAR)
}
