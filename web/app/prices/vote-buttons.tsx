import type { ReactElement } from 'react'
import type { SightingRow } from '../../../core/pricing/record.ts'
import type { SightingAct } from '../client/sightings.ts'
import { Button } from '../parts/button.tsx'

interface Props {
  sighting: SightingRow
  /** What names it to someone who hears the button alone: "Pellick C-1800 at Saltcote, $159.00". */
  name: string
  busy: boolean
  onAct: (act: SightingAct) => void
}

/** Confirm or dispute in one tap; in place of the buttons it says what you already did, or that it is your own. */
export function VoteButtons({ sighting, name, busy, onAct }: Props): ReactElement {
  if (sighting.withdrawn) return <span className="note">withdrawn</span>
  if (!sighting.mayVote) {
    const words = sighting.myVote
      ? `you ${sighting.myVote === 'confirm' ? 'confirmed' : 'disputed'}`
      : sighting.own
        ? 'yours'
        : 'not yours to judge'
    return <span className="note">{words}</span>
  }
  const voted = sighting.myVote
  return (
    <span className="votes">
      <Button small busy={busy} aria-label={`Confirm ${name}`} aria-pressed={voted === 'confirm'} onClick={() => onAct('confirm')}>
        Confirm
      </Button>
      <Button small busy={busy} aria-label={`Dispute ${name}`} aria-pressed={voted === 'dispute'} onClick={() => onAct('dispute')}>
        Dispute
      </Button>
    </span>
  )
}
