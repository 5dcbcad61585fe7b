/** A stop after one of these ends no sentence: "St. Ann", "No. 4"; "at 90 W. The" ends one, since a figure stands before it. */
const SHORT_WORD = /(?:^|[^\d\s]\s)\p{Lu}\p{Ll}{0,2}$/u

/**
 * The first sentence of a text, with its stop; all of it where it has but one.
 *
 * @example firstSentence('The tank weighs 450 lb. Decor comes on top.') // 'The tank weighs 450 lb.'
 */
export function firstSentence(text: string): string {
  for (const { index } of text.matchAll(/[.?!](?=\s+[\p{Lu}\d])/gu)) {
    if (!SHORT_WORD.test(text.slice(0, index))) return text.slice(0, index + 1)
  }
  return text
}

/**
 * The first sentence of a text that has these words, with its stop; undefined where none has them.
 *
 * @example sentenceWith('The tank weighs 450 lb. A joist takes 143 % of it. Ask.', '143 %') // 'A joist takes 143 % of it.'
 */
export function sentenceWith(text: string, words: string): string | undefined {
  for (let rest = text.trim(); rest !== '';) {
    const sentence = firstSentence(rest)
    if (hasFigure(sentence, words)) return sentence
    rest = rest.slice(sentence.length).trim()
  }
  return undefined
}

/** Whether a text has a figure as it is told, and not the end of a longer one. @example hasFigure('takes 143 %', '43 %') // false */
export function hasFigure(text: string, figure: string): boolean {
  for (let at = text.indexOf(figure); at !== -1; at = text.indexOf(figure, at + 1)) if (!/[\d.,]/.test(text.charAt(at - 1))) return true
  return false
}
