import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { Told } from '../parts/told.tsx'

/** What became of the sighting that was just posted. */
export interface Posted {
  kind: 'posted' | 'refused' | 'waits'
  productId: string
  /** "$159.00 for Pellick C-1800 at Saltcote". */
  what: string
}

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
        <p>The reason stands below, where it is kept. Mend it or discard it.</p>
      </Told>
    )
  }
  return (
    <Told kind="note" title={`Posted: ${posted.what}`} live>
      <p>
        <Link to="/prices/$productId" params={{ productId: posted.productId }}>
          See how it stands
        </Link>
      </p>
    </Told>
  )
}
