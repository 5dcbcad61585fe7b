import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function NewQuoteScreen(): ReactElement {
  return <Screen title="New quote">{null}</Screen>
}
