import { Link, useRouterState } from '@tanstack/react-router'
import { useEffect, useState, type ReactElement } from 'react'
import { placeAt, placesOf } from '../places.ts'
import { SignOut } from '../session/sign-out.tsx'
import { useSession } from '../session/session.ts'
import { DownSign, MarkSign } from './signs.tsx'
import { ThemeChoice } from './theme-choice.tsx'

/** The mark, where you are, who you are. On a phone the places fold behind "Menu". */
export function Bar(): ReactElement {
  const session = useSession()
  const person = session?.person ?? null
  const path = useRouterState({ select: (state) => state.location.pathname })
  const [menu, setMenu] = useState(false)
  const [me, setMe] = useState(false)
  useEffect(() => {
    setMenu(false)
    setMe(false)
  }, [path])
  const close = (event: { key: string }): void => {
    if (event.key !== 'Escape') return
    setMenu(false)
    setMe(false)
  }
  return (
    <header className="bar no-print" data-open={menu || undefined} data-task={placeAt(path)?.to === '/post' || undefined} onKeyDown={close}>
      <Link to="/" className="mark">
        <MarkSign />
        Driploop
      </Link>
      {person && (
        <>
          <span className="bar-place" aria-hidden="true">
            {placeAt(path)?.name}
          </span>
          <button type="button" className="menu-button" aria-expanded={menu} onClick={() => setMenu(!menu)}>
            Menu
          </button>
          <nav className="places" aria-label="Places">
            {placesOf(person.role).map((place) => (
              <Link key={place.to} to={place.to}>
                {place.name}
              </Link>
            ))}
          </nav>
        </>
      )}
      <div className="bar-end">
        {session && <span>{session.install.name}</span>}
        {person ? (
          <button type="button" className="me-button" aria-expanded={me} onClick={() => setMe(!me)}>
            {person.name}, {person.role} <DownSign />
          </button>
        ) : (
          <ThemeChoice />
        )}
        {person && (
          <div className="me-panel" hidden={!me}>
            <ThemeChoice />
            <SignOut person={person} />
          </div>
        )}
      </div>
    </header>
  )
}
