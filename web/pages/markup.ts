import { html, raw } from 'hono/html'
import type { HtmlEscapedString } from 'hono/utils/html'

/** HTML whose text was escaped. */
export type Markup = HtmlEscapedString

/** What may stand in a template: text is escaped, markup is not, false and null are left out. */
type Part = string | number | boolean | null | undefined | Markup | readonly Part[]

/**
 * A template whose values are escaped. A page has all its data before it is drawn, so nothing in it may wait.
 *
 * @example markup`<p>${'1 < 2'}</p>` // '<p>1 &lt; 2</p>'
 */
export function markup(strings: TemplateStringsArray, ...values: readonly Part[]): Markup {
  const written = html(strings, ...values)
  if (written instanceof Promise) throw new TypeError('a page was given a value that is not there yet')
  return written
}

/** A drawing of ours, whose text is escaped where it is made. */
export const drawing = (svg: string): Markup => raw(svg)
