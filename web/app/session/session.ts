import { queryOptions, useQuery } from '@tanstack/react-query'
import { useSyncExternalStore } from 'react'
import { civilDateAt, type CivilDate } from '../../../core/dates.ts'
import type { Install } from '../../../core/install.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { forgetAnswers, keptAnswer } from '../offline/kept-answer.ts'
import { getSession, type Session, type SignedIn } from '../client/session.ts'

/** Who is signed in, and where. Read once, then whenever an answer says that the session ended. */
export const sessionQuery = queryOptions({ queryKey: ['session'], queryFn: keptAnswer('session', currentSession), staleTime: 5 * 60_000 })

/** Where nobody is signed in any more, nothing that was read for somebody stays. */
async function currentSession(): Promise<Session> {
  const session = await getSession()
  if (session.person === null) forgetAnswers()
  return session
}

export function useSession(): Session | undefined {
  return useQuery(sessionQuery).data
}

/** The person signed in. Throws outside screens that ask for a sign-in. */
export function usePerson(): SignedIn {
  const person = useSession()?.person
  if (!person) throw new Error('This screen needs someone signed in')
  return person
}

/** The install as signed-in screens need it. */
export function useInstall(): Install {
  const install = useSession()?.install
  if (!install) throw new Error('This screen needs an install')
  return install
}
/** The units this person reads and types in: their own where they chose them. */
export function useReader(): ReaderUnits {
  const install = useInstall()
  return useSession()?.person?.units ?? install.units
}
export const useCurrency = (): string => useInstall().currency

/** A day turns at midnight; a screen left open learns of it within this. */
const DAY_CHECK_MS = 60_000
function everyMinute(check: () => void): () => void {
  const timer = setInterval(check, DAY_CHECK_MS)
  return () => clearInterval(timer)
}

/** The civil day now, in the install's time zone. */
export function useToday(): CivilDate {
  const { timeZone } = useInstall()
  return useSyncExternalStore(everyMinute, () => civilDateAt(Date.now(), timeZone))
}
