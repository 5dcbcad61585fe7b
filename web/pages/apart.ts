import { markup, type Markup } from './markup.ts'

/**
 * Words that somebody typed, inside a sentence of ours: their writing direction ends with them, whatever the letters are.
 *
 * @example apart('נועה') // '<bdi>נועה</bdi>'
 */
export const apart = (words: string): Markup => markup`<bdi>${words}</bdi>`
