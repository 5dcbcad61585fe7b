/** RFC 5321, 4.5.3.1: 64 octets before the @; 254 in all, since a path in angle brackets has 256. */
const LONGEST = 254
const LONGEST_NAME = 64

/** A dot-atom of RFC 5322, 3.2.3, in lower ASCII: quoted names and other scripts are let in by few mail servers. */
const NAME = /^[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+(?:\.[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+)*$/
/** Labels of RFC 1123, 2.1, two or more: an address of numbers or of this computer is nobody's mail. */
const HOST = /^(?:[A-Za-z0-9](?:[A-Za-z0-9-]{0,61}[A-Za-z0-9])?\.)+[A-Za-z](?:[A-Za-z0-9-]{0,61}[A-Za-z0-9])?$/

/**
 * Whether a text is one mail address and nothing else: no display name, no second address, no sign that could begin a header of its own.
 *
 * @example isMailAddress('ida@post.example') // true
 * @example isMailAddress('Ida <ida@post.example>') // false
 */
export function isMailAddress(text: string): boolean {
  const at = text.lastIndexOf('@')
  const [name, host] = [text.slice(0, at), text.slice(at + 1)]
  return at > 0 && text.length <= LONGEST && name.length <= LONGEST_NAME && NAME.test(name) && HOST.test(host)
}
