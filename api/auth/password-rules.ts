import type { Result } from '../../core/result.ts'
import { ok, refuse } from '../../core/result.ts'
import { COMMON_PASSWORDS } from './common-passwords.ts'

/** NIST SP 800-63B-4, 3.1.1.2: at least 15 where the password is the only factor. Counted in code points. */
export const PASSWORD_MIN = 15
/** The same says at least 64 must be taken; 256 bounds the work of one request. */
export const PASSWORD_MAX = 256
/** What must be left of a password once everything that a guesser knows is taken out: a common word of eight letters is the first thing tried. */
const OWN_PART_MIN = 8

export interface PasswordRefusal {
  code: 'too_short' | 'too_long' | 'common' | 'about_you' | 'repeated'
  limit: string
  message: string
}

const folded = (text: string): string =>
  text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '')

/** The smallest piece that a text is a repetition of. @example unitOf('abcabcabc') // 'abc' */
function unitOf(text: string): string {
  for (let size = 1; size <= text.length / 2; size += 1) {
    if (text.length % size === 0 && text.slice(0, size).repeat(text.length / size) === text) return text.slice(0, size)
  }
  return text
}

const RUNS = [
  'abcdefghijklmnopqrstuvwxyz',
  '01234567890123456789',
  '98765432109876543210',
  'qwertyuiopasdfghjklzxcvbnm',
  'zyxwvutsrqponmlkjihgfedcba',
]

function withoutWords(text: string, words: readonly string[]): string {
  return words.reduce((rest, word) => (word.length >= 3 ? rest.replaceAll(word, '') : rest), text)
}

/**
 * Whether a password may be chosen. No composition rules: length, and not what a guesser tries first.
 *
 * `context` is what a guesser knows: the club's name, the person's name and sign-in name.
 *
 * @example passwordFault('kelp lantern orbit 52', ['Tarnwick Aquarium Club', 'dana']) // ok
 */
export function checkPassword(password: string, context: readonly string[]): Result<string, PasswordRefusal> {
  const text = password.normalize('NFC')
  const length = [...text].length
  const limit = `${PASSWORD_MIN} to ${PASSWORD_MAX} characters`
  if (length < PASSWORD_MIN)
    return refuse({
      code: 'too_short',
      limit,
      message: `It has ${length} characters; it needs at least ${PASSWORD_MIN}. Four words in a row are easy to keep in mind.`,
    })
  if (length > PASSWORD_MAX)
    return refuse({ code: 'too_long', limit, message: `It has ${length} characters; at most ${PASSWORD_MAX} are taken.` })
  const plain = folded(text)
  // A password of signs or emoji alone has nothing to fold: only its own repetition counts.
  if ([...unitOf(text)].length < OWN_PART_MIN || (plain.length >= PASSWORD_MIN / 2 && unitOf(plain).length < OWN_PART_MIN)) {
    return refuse({ code: 'repeated', limit, message: 'It repeats one short piece. Choose something longer of your own.' })
  }
  if (plain === '') return ok(text)
  if (COMMON_PASSWORDS.has(plain) || withoutWords(plain, RUNS.flatMap(piecesOf)).length === 0) {
    return refuse({ code: 'common', limit, message: 'It is among the passwords that are tried first. Choose another.' })
  }
  const known = context.flatMap((words) => [folded(words), ...words.split(/\s+/).map(folded)]).sort((a, b) => b.length - a.length)
  if (
    known.some((word) => word.length >= 3 && plain.includes(word)) &&
    withoutWords(plain, known).replace(/\d/g, '').length < OWN_PART_MIN
  ) {
    return refuse({
      code: 'about_you',
      limit,
      message: 'It is little more than your name or the name of this place. Choose something nobody here would guess.',
    })
  }
  return ok(text)
}

/** Runs of a keyboard or an alphabet, longest first: "qwertyuiop", "0123456789". */
function piecesOf(run: string): string[] {
  const sizes = Array.from({ length: run.length - 3 }, (_, index) => run.length - index)
  return sizes.flatMap((size) => Array.from({ length: run.length - size + 1 }, (_, start) => run.slice(start, start + size)))
}
