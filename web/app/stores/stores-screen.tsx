import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function StoresScreen(): ReactElement {
  return <Screen title="Stores">{null}</Screen>
}
