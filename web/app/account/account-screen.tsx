import type { ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'
import { usePerson } from '../session/session.ts'
import { HearingSection } from './hearing-section.tsx'
import { OwnUnitsForm } from './own-units-form.tsx'
import { OwnSessions } from './own-sessions.tsx'
import { PasswordForm } from './password-form.tsx'

/** What everyone changes of their own. */
export function AccountScreen(): ReactElement {
  const { name, role } = usePerson()
  return (
    <Screen title="Your account" below={`${name}, ${role}.`} width="narrow">
      <HearingSection />
      <OwnUnitsForm />
      <PasswordForm />
      <OwnSessions />
    </Screen>
  )
}
