import type { ReactElement } from 'react'
import { Button } from './button.tsx'
import { Told } from './told.tsx'

export interface Clash {
  label: string
  mine: string
  theirs: string
}

/** Before the newest version is read: what happened, what is safe, what to do. */
export function StaleTold({ busy, onCompare }: { busy: boolean; onCompare: () => void }): ReactElement {
  return (
    <Told kind="stop" title="Not saved: someone changed this meanwhile" live>
      <p>What you typed is kept here. Bring in their change, look at it, then save again.</p>
      <p>
        <Button busy={busy} onClick={onCompare}>
          Bring in their change
        </Button>
      </p>
    </Told>
  )
}

/** After it: what both changed, yours standing. */
export function MergedTold({ clashes }: { clashes: readonly Clash[] }): ReactElement {
  return (
    <Told kind="warn" title="Their change is in the form now" live>
      {clashes.length === 0 ? (
        <p>You and they changed different fields. Save again to keep both.</p>
      ) : (
        <>
          <p>Both of you changed these. Yours stands in the form; saving puts it in place of theirs.</p>
          <ul>
            {clashes.map(({ label, mine, theirs }) => (
              <li key={label}>
                <strong>{label}</strong>: yours {mine || 'empty'}, theirs {theirs || 'empty'}
              </li>
            ))}
          </ul>
        </>
      )}
    </Told>
  )
}
