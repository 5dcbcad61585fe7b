import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function CustomersScreen(): ReactElement {
  return <Screen title="Customers">{null}</Screen>
}
