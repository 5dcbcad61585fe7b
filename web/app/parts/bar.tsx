import { useQuery } from '@tanstack/react-query'
import { Link, useRouterState } from '@tanstack/react-router'
import { useEffect, useState, type ReactElement } from 'react'
import type { SignedIn } from '../client/session.ts'
import { placeAt, placesOf } from '../places.ts'
import { useSession } from '../session/session.ts'
import { SignOut } from '../session/sign-out.tsx'
import { noticeCountQuery } from '../watches/watches-query.ts'
import { DownSign, MarkSign } from './signs.tsx'
import { ThemeChoice } from './theme-choice.tsx'

/** Something of the bar that opens: closed by Escape and by going elsewhere. */
function useOpening(path: string): [open: boolean, toggle: () => void] {
  const [openAt, setOpenAt] = useState<string | null>(null)
  const open = openAt === path
  useEffect(() => {
    if (!open) return
    const close = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') setOpenAt(null)
    }
    document.addEventListener('keydown', close)
    return () => document.removeEventListener('keydown', close)
  }, [open])
  return [open, () => setOpenAt(open ? null : path)]
}

/** The mark, where you are, who you are. On a phone the places fold behind "Menu"; a task screen hides the bar there. */
export function Bar(): ReactElement {
  const session = useSession()
  const person = session?.person ?? null
  const path = useRouterState({ select: (state) => state.location.pathname })
  const [menu, toggleMenu] = useOpening(path)
  const place = placeAt(path)
  return (
    <header className="bar no-print" data-open={menu || undefined} data-task={place?.to === '/post' || undefined}>
      <Link to="/" className="mark">
        <MarkSign />
        Driploop
      </Link>
      {person && (
        <>
          <span className="bar-place" aria-hidden="true">
            {place?.name}
          </span>
          <button type="button" className="menu-button" aria-expanded={menu} onClick={toggleMenu}>
            Menu
            <NotSeen />
          </button>
          <nav className="places" aria-label="Places">
            {placesOf(person.role).map(({ to, name }) => (
              <Link key={to} to={to}>
                {name}
                {to === '/watches' && <NotSeen />}
              </Link>
            ))}
          </nav>
        </>
      )}
      <div className="bar-end">
        {session && <span>{session.install.name}</span>}
        {person ? <Me person={person} path={path} /> : <ThemeChoice />}
      </div>
    </header>
  )
}

/** How many deals one was told of and has not looked at; nothing where there are none. */
function NotSeen(): ReactElement | null {
  const count = useQuery(noticeCountQuery).data?.notSeen ?? 0
  if (count === 0) return null
  return (
    <span className="place-count">
      {count}
      <span className="sr"> new</span>
    </span>
  )
}

/** Who is signed in; opens to the look and to signing out. */
function Me({ person, path }: { person: SignedIn; path: string }): ReactElement {
  const [open, toggle] = useOpening(path)
  return (
    <>
      <button type="button" className="me-button" aria-expanded={open} onClick={toggle}>
        {person.name}, {person.role} <DownSign />
      </button>
      <div className="me-panel" data-shut={!open || undefined}>
        <ThemeChoice />
        <Link to="/account">Your account</Link>
        <SignOut person={person} />
      </div>
    </>
  )
}
