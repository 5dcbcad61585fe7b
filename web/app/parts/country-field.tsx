import type { ReactElement } from 'react'
import { countryName, NO_COUNTRY_WORDS } from '../../../core/country-name.ts'
import { TextField } from './field.tsx'

/** Two letters, with the country that they stand for: GE is Georgia, and not the start of Germany. */
export function CountryField({
  value,
  onChange,
  fault,
}: {
  value: string
  onChange: (text: string) => void
  fault?: string | undefined
}): ReactElement {
  const name = countryName(value)
  const unknown = value.trim() !== '' && name === null ? NO_COUNTRY_WORDS : undefined
  return (
    <TextField label="Country" value={value} onChange={onChange} fault={unknown ?? fault} help={name ?? 'Two letters, like US.'} required />
  )
}
