import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function EditStoreScreen(): ReactElement {
  return <Screen title="Store">{null}</Screen>
}
