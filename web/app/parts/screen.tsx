import { useEffect, useRef, type ReactElement, type ReactNode } from 'react'

interface Props {
  /** The h1 and, unless `pageTitle` says otherwise, the title of the page. */
  title: string
  pageTitle?: string
  /** A small line above the heading: "Filter, canister". */
  above?: ReactNode
  /** A line below the heading. */
  below?: ReactNode
  /** Buttons at the end of the heading's line. */
  actions?: ReactNode
  width?: 'narrow' | 'usual' | 'wide'
  children: ReactNode
}

/** True from the first screen on: the first keeps the browser's own focus, each later one moves it to its heading. */
let wasShown = false

/** One screen: its landmark, its one h1, its title; focus goes to the heading after a navigation. */
export function Screen({ title, pageTitle, above, below, actions, width = 'usual', children }: Props): ReactElement {
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    document.title = `${pageTitle ?? title} · Driploop`
  }, [pageTitle, title])
  useEffect(() => {
    // A screen whose first thing to do took the focus keeps it there.
    if (wasShown && !document.activeElement?.closest('main')) heading.current?.focus()
    wasShown = true
  }, [])
  return (
    <main id="main" className={`screen ${width === 'usual' ? '' : width}`.trim()}>
      <header className="screen-head">
        <div>
          {above && <p className="label">{above}</p>}
          <h1 ref={heading} tabIndex={-1}>
            {title}
          </h1>
          {below && <p className="quiet">{below}</p>}
        </div>
        {actions && <div className="acts">{actions}</div>}
      </header>
      {children}
    </main>
  )
}
