import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function PricesScreen(): ReactElement {
  return <Screen title="Prices">{null}</Screen>
}
