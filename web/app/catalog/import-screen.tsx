import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function ImportScreen(): ReactElement {
  return <Screen title="Import">{null}</Screen>
}
