import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function QuotesScreen(): ReactElement {
  return <Screen title="Quotes">{null}</Screen>
}
