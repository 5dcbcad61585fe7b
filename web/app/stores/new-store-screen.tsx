import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function NewStoreScreen(): ReactElement {
  return <Screen title="New store">{null}</Screen>
}
