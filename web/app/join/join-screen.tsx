import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function JoinScreen(): ReactElement {
  return <Screen title="Join">{null}</Screen>
}
