import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { Told } from '../parts/told.tsx'
import type { Posted } from './posted.ts'

/** What became of the sighting that was just posted. */
export function PostedTold({ posted }: { posted: Posted }): ReactElement {
  if (posted.kind === 'waits') {
    return (
      <Told kind="offline" title={`Kept on this phone: ${posted.what}`} live>
        <p>The server was not reached. It posts once, by itself, when it is.</p>
      </Told>
    )
  }
  if (posted.kind === 'refused') {
    return (
      <Told kind="stop" title={`Not taken: ${posted.what}`} live>
        <p>The reason stands below, where it is kept. Correct it or discard it.</p>
      </Told>
    )
  }
  return (
    <Told kind={posted.doubt ? 'warn' : 'note'} title={`Posted: ${posted.what}`} live>
      {posted.doubt && (
        <p>
          It waits for a second member and is not counted yet. {posted.doubt} If it is a slip, withdraw it where it stands and post the
          right one.
        </p>
      )}
      <p>
        <Link to="/prices/$productId" params={{ productId: posted.productId }}>
          See how it stands
        </Link>
      </p>
    </Told>
  )
}
