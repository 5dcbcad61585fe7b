import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function SettingsScreen(): ReactElement {
  return <Screen title="Settings">{null}</Screen>
}
