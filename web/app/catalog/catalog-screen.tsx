import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function CatalogScreen(): ReactElement {
  return <Screen title="Catalog">{null}</Screen>
}
