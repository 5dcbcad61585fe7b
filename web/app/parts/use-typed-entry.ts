import { useEffect, useEffectEvent, useState, type KeyboardEvent } from 'react'
import { followEntry, leaveEntry, openEntry, typeEntry, type Reading } from './typed-entry.ts'

interface Meaning<Value> {
  value: Value | null
  read: (text: string) => Reading<Value>
  spell: (value: Value | null) => string
  /** Called when the field is left or Enter is pressed in it, with the value or with what is wrong. */
  tell: (value: Value | null, fault: string | null) => void
}

interface Entry {
  value: string
  fault: string | null
  onChange: (text: string) => void
  onBlur: () => void
  onKeyDown: (event: KeyboardEvent) => void
}

/** A text field that stands for a value: judged when it is left, never while it is typed in. */
export function useTypedEntry<Value>({ value, read, spell, tell }: Meaning<Value>): Entry {
  const [held, setEntry] = useState(() => openEntry(value, spell))
  const entry = followEntry(held, value, spell)
  if (entry !== held) setEntry(entry)
  const leave = (): void => {
    const left = leaveEntry(entry, read, spell)
    setEntry(left.entry)
    if (left.reading) tell(left.reading.value, left.reading.fault)
  }
  const fault = entry.typing ? null : read(entry.text).fault
  // A text refused for the sake of another field goes through once that field gives way.
  const released = entry.refused && !entry.typing && fault === null
  // What leaving does is the newest render's; only that it may go through is waited for.
  const leaveReleased = useEffectEvent(leave)
  useEffect(() => {
    // oxlint-disable-next-line react/set-state-in-effect -- what releases the text is another field's change, which is no event of this one
    if (released) leaveReleased()
  }, [released])
  return {
    value: entry.text,
    fault,
    onChange: (text) => setEntry(typeEntry(entry, text)),
    onBlur: leave,
    onKeyDown: (event) => {
      if (event.key === 'Enter') leave()
    },
  }
}
