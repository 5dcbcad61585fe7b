import { useEffect, useState, type ReactElement } from 'react'
import { TextField } from './field.tsx'

/** A pause in typing this long means that the word is meant. */
const PAUSE_MS = 250

/** A word to search for; told after a pause in typing, trimmed, undefined where empty. */
export function SearchField({
  label,
  value,
  onChange,
}: {
  label: string
  value: string | undefined
  onChange: (word: string | undefined) => void
}): ReactElement {
  const [typed, setTyped] = useState(value ?? '')
  const word = typed.trim() || undefined
  useEffect(() => {
    if (word === value) return
    const timer = setTimeout(() => onChange(word), PAUSE_MS)
    return () => clearTimeout(timer)
  }, [word, value, onChange])
  return <TextField label={label} type="search" value={typed} onChange={setTyped} enterKeyHint="search" />
}
