import type { ReactElement, ReactNode } from 'react'

/** Something that must be said beside what it is about. At most one in a view; it never leaves by itself. */
export function Told({
  kind,
  title,
  children,
  live = false,
}: {
  kind: 'note' | 'warn' | 'stop' | 'offline'
  title?: string
  children?: ReactNode
  live?: boolean
}): ReactElement {
  return (
    <div className={`told ${kind}`} role={live ? (kind === 'stop' ? 'alert' : 'status') : undefined}>
      {title && (
        <p>
          <strong>{title}</strong>
        </p>
      )}
      {children}
    </div>
  )
}
