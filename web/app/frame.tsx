import { Link, Outlet, useRouter, useRouterState } from '@tanstack/react-router'
import { useEffect, type ReactElement } from 'react'
import { isPublicPath } from './places.ts'
import { Bar } from './parts/bar.tsx'
import { Button } from './parts/button.tsx'
import { Screen } from './parts/screen.tsx'
import { ErrorNotice } from './parts/states.tsx'
import { UnsentSender } from './post/unsent-sender.tsx'
import { useSession } from './session/session.ts'

/** Bar, screen, and the sender of what this phone still holds. Reads the session: its end leads to the sign-in. */
export function Frame(): ReactElement {
  const session = useSession()
  const router = useRouter()
  const path = useRouterState({ select: (state) => state.location.pathname })
  const href = useRouterState({ select: (state) => state.location.href })
  const open = isPublicPath(path)
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
      {!ended && <Outlet />}
      {session?.person && <UnsentSender personId={session.person.id} />}
    </>
  )
}

/** A screen that could not be shown: its part did not load, or it has a mistake. */
export function RouteFault({ error, reset }: { error: unknown; reset: () => void }): ReactElement {
  return (
    <Screen title="This screen could not be shown" width="narrow">
      <ErrorNotice error={error} />
      <p className="acts">
        <Button look="main" onClick={reset}>
          Try again
        </Button>
        <Button onClick={() => window.location.assign('/')}>Load the page anew</Button>
      </p>
    </Screen>
  )
}

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
