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
