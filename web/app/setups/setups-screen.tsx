import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function SetupsScreen(): ReactElement {
  return <Screen title="Setups">{null}</Screen>
}
