import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function CustomerScreen(): ReactElement {
  return <Screen title="Customer">{null}</Screen>
}
