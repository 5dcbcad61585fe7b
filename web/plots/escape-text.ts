const NAMED: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }

/** What XML forbids even when escaped: control characters but tab and line ends, and the two non-characters. */
// oxlint-disable-next-line no-control-regex -- naming the control characters is the whole purpose of this expression
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g

/**
 * Text from a person, safe inside an SVG element or attribute. Lone surrogates become U+FFFD, forbidden characters go.
 *
 * @example escapeText('6 < 7 & "so"') // '6 &lt; 7 &amp; &quot;so&quot;'
 */
export const escapeText = (text: string): string =>
  text
    .toWellFormed()
    .replace(FORBIDDEN, '')
    .replace(/[&<>"']/g, (sign) => NAMED[sign] ?? sign)
