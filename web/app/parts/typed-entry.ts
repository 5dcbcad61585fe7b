/**
 * The text of a field that stands for a value. It is kept as typed until the field is left; only then is it judged and told. A text that is refused stays
 * where it is, and the value it was to replace stays what it was.
 */
export interface TypedEntry<Value> {
  text: string
  /** Changed since it was last judged. */
  typing: boolean
  /** Judged and refused: nothing was told, so a limit that gives way later may still let it through. */
  refused: boolean
  /** The value the text stands for; null where it was refused. */
  told: Value | null
  /** The value as the form last had it. */
  outside: Value | null
}

/** What judging a text came to. */
export type Reading<Value> = { value: Value | null; fault: null } | { value: null; fault: string }
type Spell<Value> = (value: Value | null) => string

export const openEntry = <Value>(value: Value | null, spell: Spell<Value>): TypedEntry<Value> => ({
  text: spell(value),
  typing: false,
  refused: false,
  told: value,
  outside: value,
})

/** A key was pressed. */
export const typeEntry = <Value>(entry: TypedEntry<Value>, text: string): TypedEntry<Value> => ({ ...entry, text, typing: true })

/**
 * The form has this value now; the same entry where it had it before. A value that came from elsewhere is spelled, but never over a text that is being
 * typed.
 *
 * @example followEntry(typeEntry(openEntry(5, String), '5 m'), 7, String).text // '5 m'
 */
export function followEntry<Value>(entry: TypedEntry<Value>, value: Value | null, spell: Spell<Value>): TypedEntry<Value> {
  if (Object.is(value, entry.outside)) return entry
  if (entry.typing || Object.is(value, entry.told)) return { ...entry, outside: value }
  return openEntry(value, spell)
}

/**
 * The field is left, or Enter pressed: what the text came to, null where nothing was typed.
 *
 * @example leaveEntry(typeEntry(openEntry(5, String), '-3'), read, String).reading // { value: null, fault: 'How many is -3. The least is 1.' }
 */
export function leaveEntry<Value>(
  entry: TypedEntry<Value>,
  read: (text: string) => Reading<Value>,
  spell: Spell<Value>,
): { entry: TypedEntry<Value>; reading: Reading<Value> | null } {
  if (!entry.typing && !entry.refused) return { entry, reading: null }
  const reading = read(entry.text)
  if (reading.fault !== null) return { entry: { ...entry, typing: false, refused: true, told: null }, reading }
  return { entry: { text: spell(reading.value), typing: false, refused: false, told: reading.value, outside: entry.outside }, reading }
}
