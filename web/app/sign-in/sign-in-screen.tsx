import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'

export function SignInScreen(): ReactElement {
  return <Screen title="Sign in">{null}</Screen>
}
