import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function PeopleScreen(): ReactElement {
  return <Screen title="People">{null}</Screen>
}
