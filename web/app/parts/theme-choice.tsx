import { useState, type ReactElement } from 'react'
import { applyTheme, keepTheme, readTheme, type Theme } from '../theme.ts'
import { ChoiceField } from './choice-fields.tsx'

const OPTIONS = [
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
  { value: 'auto', label: 'Auto' },
] as const

/** Light, dark, or as the device says; kept in this browser. */
export function ThemeChoice(): ReactElement {
  const [theme, setTheme] = useState<Theme>(readTheme)
  return (
    <div className="theme-choice">
      <ChoiceField
        label="Look"
        value={theme}
        options={OPTIONS}
        onChange={(next) => {
          setTheme(next)
          keepTheme(next)
          applyTheme(next)
        }}
      />
    </div>
  )
}
