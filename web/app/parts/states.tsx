import { useEffect, useState, type ReactElement, type ReactNode } from 'react'
import { fieldKey, problemOf } from '../client/problem.ts'
import { Button } from './button.tsx'
import { Told } from './told.tsx'
import { useOnline } from './use-online.ts'

/** One sentence about what will be here, and the one button that makes the first. */
export function Empty({ children, action }: { children: ReactNode; action?: ReactNode }): ReactElement {
  return (
    <div className="empty">
      <p>{children}</p>
      {action}
    </div>
  )
}

/** Below this a wait is not noticed; showing something would only flicker. */
const QUIET_MS = 300

/** Rows at their final height with the hatch, after a wait that would be noticed. */
export function LoadingRows({ rows = 6, what }: { rows?: number; what: string }): ReactElement {
  const [late, setLate] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setLate(true), QUIET_MS)
    return () => clearTimeout(timer)
  }, [])
  return (
    <div aria-live="polite">
      <span className="sr">Reading {what}</span>
      {late && (
        <div className="loading-rows" aria-hidden="true">
          {Array.from({ length: rows }, (_, row) => (
            <div key={row}>
              <span className="waiting" />
            </div>
          ))}
        </div>
      )}
    </div>
  )
}

/** What happened, what is safe, what to do. Field faults are shown beside their fields, the rest is listed here. */
export function ErrorNotice({
  error,
  shown = [],
  onRetry,
  retryWords = 'Try again',
  conflict,
  children,
}: {
  error: unknown
  shown?: readonly string[]
  onRetry?: () => void
  retryWords?: string
  /** What a 409 is called here, where "it has changed meanwhile" would not be the reason. */
  conflict?: string
  children?: ReactNode
}): ReactElement | null {
  const online = useOnline()
  if (!error) return null
  const problem = problemOf(error)
  const others = problem.errors.filter(({ field }) => !shown.includes(fieldKey(field)))
  const cut = problem.status === 0
  // Said beside its field, or in the list below.
  const repeats = problem.errors.some(({ message }) => message === problem.detail)
  // What is read again was not typed.
  const detail = cut && onRetry ? 'Check the connection and try again.' : problem.detail
  // A box with a title alone would leave its reader looking: what is wrong may stand at a field that is out of sight.
  const speaks = others.length > 0 || problem.errors.length === 0 || (detail && detail !== problem.title && !repeats)
  return (
    <Told
      kind={cut ? 'offline' : 'stop'}
      title={cut && !online ? 'No signal' : problem.status === 409 && conflict ? conflict : problem.title}
      live
    >
      {detail && detail !== problem.title && !repeats && <p>{detail}</p>}
      {!speaks && <p>What is wrong stands beside its field.</p>}
      {others.length > 0 && (
        <ul>
          {others.map(({ field, message }) => (
            <li key={field + message}>{message}</li>
          ))}
        </ul>
      )}
      {children}
      {onRetry && (
        <p>
          <Button small onClick={onRetry}>
            {retryWords}
          </Button>
        </p>
      )}
    </Told>
  )
}
