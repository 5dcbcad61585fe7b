import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function ProductScreen(): ReactElement {
  return <Screen title="Product">{null}</Screen>
}
