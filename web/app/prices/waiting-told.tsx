import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { Told } from '../parts/told.tsx'
import { useUnsent } from '../post/use-unsent.ts'
import { waitingWords } from './kept-here.ts'

/** That this phone holds sightings which the server has not got, and the way to them. */
export function WaitingTold({ personId }: { personId: string }): ReactElement | null {
  const queue = useUnsent(personId)
  if (queue.length === 0) return null
  return (
    <Told kind={queue.some(({ refused }) => refused !== null) ? 'stop' : 'offline'} title={waitingWords(queue)} live>
      <p>
        <Link to="/post" search={{}}>
          See what is kept
        </Link>
      </p>
    </Told>
  )
}
