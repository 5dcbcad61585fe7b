import { Link, Outlet, useRouter, useRouterState } from '@tanstack/react-router'
import { useCallback, useEffect, type ReactElement } from 'react'
import { problemOf } from './client/problem.ts'
import { isPublicPath } from './places.ts'
import { Bar } from './parts/bar.tsx'
import { Button } from './parts/button.tsx'
import { PlainHttpBanner } from './parts/plain-http.tsx'
import { Screen } from './parts/screen.tsx'
import { ErrorNotice } from './parts/states.tsx'
import { UnsentSender } from './post/unsent-sender.tsx'
import { useReadAhead } from './read-ahead.ts'
import { useSession } from './session/session.ts'

/** Bar, screen, and the sender of what this phone still holds. Reads the session: its end leads to the sign-in. */
export function Frame(): ReactElement {
  const session = useSession()
  const router = useRouter()
  const path = useRouterState({ select: (state) => state.location.pathname })
  const href = useRouterState({ select: (state) => state.location.href })
  const open = isPublicPath(path)
  useReadAhead(session?.person?.id)
  const ended = session !== undefined && session.person === null && !open
  useEffect(() => {
    if (ended) void router.navigate({ to: '/sign-in', search: { next: href } })
  }, [ended, href, router])
  return (
    <>
      <a className="skip" href="#main">
        To the content
      </a>
      <Bar />
      <PlainHttpBanner />
      {!ended && <Outlet />}
      {session?.person && <UnsentSender personId={session.person.id} />}
    </>
  )
}

/** A screen that could not be shown: its part did not come, which the next signal mends by itself, or it has a mistake. */
export function RouteFault({ error, reset }: { error: unknown; reset: () => void }): ReactElement {
  const router = useRouter()
  const cut = problemOf(error).status === 0
  const again = useCallback(async (): Promise<void> => {
    await router.invalidate()
    reset()
  }, [router, reset])
  useEffect(() => {
    if (!cut) return
    const go = (): void => void again()
    window.addEventListener('online', go)
    return () => window.removeEventListener('online', go)
  }, [cut, again])
  return (
    <Screen title={cut ? 'This screen is not on this device yet' : 'This screen could not be shown'} width="narrow">
      <ErrorNotice error={error} />
      <p className="acts">
        <Button look="main" onClick={() => void again()}>
          Try again
        </Button>
        {!cut && <Button onClick={() => window.location.reload()}>Load the page anew</Button>}
      </p>
    </Screen>
  )
}

/** As RouteFault where even the frame failed: the bar stays, so that another place is in reach. */
export const FrameFault = (props: { error: unknown; reset: () => void }): ReactElement => (
  <>
    <Bar />
    <RouteFault {...props} />
  </>
)

export function RouteMissing(): ReactElement {
  return (
    <Screen title="Nothing at this address" width="narrow">
      <p>The address has a slip in it, or what was here is gone.</p>
      <p>
        <Link to="/">To the first screen</Link>
      </p>
    </Screen>
  )
}
