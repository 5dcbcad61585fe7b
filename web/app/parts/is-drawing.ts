/** A tag as our drawings write it: names, and values in double quotes. Whatever else begins like one is refused. */
const TAG = /<\/?([a-z][\w-]*)((?:\s+[\w:-]+="[^"<>]*")*)\s*\/?>/gi
const ATTRIBUTE = /([\w:-]+)="([^"]*)"/g
const REFUSED_TAG = /^(?:script|foreignObject|iframe|object|embed|style|link|animate\w*|set)$/i

const isHarmless = ([, tag = '', attributes = '']: RegExpExecArray): boolean =>
  !REFUSED_TAG.test(tag) &&
  // A reference leads to the drawing itself.
  [...attributes.matchAll(ATTRIBUTE)].every(
    ([, name = '', value = '']) => !/^on/i.test(name) && (!/href$/i.test(name) || value.startsWith('#')),
  )

/**
 * Whether markup is one drawing of ours: an SVG element whose tags run nothing and lead nowhere. Only tags and the names of their attributes are
 * judged: text and what stands in quotes is escaped, and a name may say there what it likes.
 *
 * @example isDrawing('<svg><text>Reef Shop online=yes</text></svg>') // true
 * @example isDrawing('<svg><rect onload="…"/></svg>') // false
 */
export const isDrawing = (markup: string): boolean =>
  /^\s*<svg[\s>]/.test(markup) && !markup.replace(TAG, '').includes('<') && [...markup.matchAll(TAG)].every(isHarmless)
