import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function PostScreen(): ReactElement {
  return <Screen title="Post a sighting">{null}</Screen>
}
