import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function NewProductScreen(): ReactElement {
  return <Screen title="New product">{null}</Screen>
}
