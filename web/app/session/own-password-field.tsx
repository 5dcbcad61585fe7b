import type { ReactElement } from 'react'
import { COUNTED_MINUTES, MOST_WRONG_PASSWORDS } from '../../../core/people/sign-in-limits.ts'
import { TextField, type TextFieldProps } from '../parts/field.tsx'

const WORDS = `${MOST_WRONG_PASSWORDS} wrong ones lock this, and signing in to your account from here, for ${COUNTED_MINUTES} minutes.`

/** The password of whoever is signed in, asked for once more. Wrong ones count as failed sign-ins do, and it says so. */
export const OwnPasswordField = (field: Pick<TextFieldProps, 'value' | 'onChange' | 'fault' | 'focusFirst'>): ReactElement => (
  <TextField
    {...field}
    label="Your password"
    name="current-password"
    type="password"
    autoComplete="current-password"
    help={WORDS}
    required
  />
)
