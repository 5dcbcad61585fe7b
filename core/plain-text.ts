/**
 * Whether text can be stored and shown as it is: no half characters (lone surrogates) and no control characters but tab and line breaks.
 * A database refuses the one and the NUL among the other; a page or a PDF shows the rest as boxes.
 *
 * @example isPlainText('two\nlines') // true
 */
export const isPlainText = (text: string): boolean => text.isWellFormed() && !/(?![\t\n\r])\p{Cc}/u.test(text)
