/**
 * Whether text can be stored and shown as it is: no half characters (lone surrogates) and no control characters but tab and line breaks.
 * A database refuses the one and the NUL among the other; a page or a PDF shows the rest as boxes.
 *
 * @example isPlainText('two\nlines') // true
 */
export const isPlainText = (text: string): boolean => text.isWellFormed() && !/(?![\t\n\r])\p{Cc}/u.test(text)

/**
 * Text without the signs that turn, embed or isolate a writing direction (U+202A to U+202E, U+2066 to U+2069). Nobody sees them, and they
 * reach beyond the text they stand in: a name could turn the sentence or the price beside it around. Telephones and address books add them to
 * what is copied there, so they are taken out like blanks at the ends and not refused. The letters themselves say their direction; marks that
 * reach no further than their place (U+200E, U+200F, U+061C) stay.
 *
 * Source: Unicode Standard Annex 9, section 2.
 *
 * @example withoutTurns('5 \u202EEUR') // '5 EUR'
 */
export const withoutTurns = (text: string): string => text.replace(/[\u202A-\u202E\u2066-\u2069]/g, '')

/**
 * Whether something of a text can be seen: more than blanks, joiners, soft hyphens and fillers that a page shows as nothing. Between letters
 * and inside an emoji the same signs have their work and stay.
 *
 * Source: Unicode Standard, property Default_Ignorable_Code_Point, and White_Space; of the former those that keyboards and copied pages bring.
 *
 * @example isVisible('\u200B \u3164') // false
 */
export const isVisible = (text: string): boolean => /[^\s\u00AD\u115F\u1160\u180E\u200B-\u200F\u061C\u2060\u3164\uFEFF]/u.test(text)
