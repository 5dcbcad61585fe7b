import type { ReactElement } from 'react'
import type { SightingRow } from '../../../core/pricing/record.ts'
import type { SightingAct } from '../client/sightings.ts'
import { Button } from '../parts/button.tsx'
import { noVoteWords } from './sighting-words.ts'

interface Props {
  sighting: SightingRow
  personId: string
  /** What names it to someone who hears the button alone: "Pellick C-1800 at Saltcote, $159.00". */
  name: string
  busy: boolean
  onAct: (act: SightingAct) => void
  /** Says nothing in place of buttons where one has no vote: where most rows would, their words are noise. */
  silent?: boolean
}

/** Confirm or dispute in one tap. After it, what you said, the way to the opposite and the way back: the last word counts. Without a vote, why, or nothing. */
export function VoteButtons({ sighting, personId, name, busy, onAct, silent = false }: Props): ReactElement | null {
  const none = noVoteWords(sighting, personId)
  if (none !== null && silent) return null
  if (none !== null) return <span className="note">{none}</span>
  const vote = (act: Exclude<SightingAct, 'withdraw'>, words: string): ReactElement => (
    <Button small busy={busy} aria-label={`${words} ${name}`} onClick={() => onAct(act)}>
      {words}
    </Button>
  )
  if (sighting.myVote === null) {
    return (
      <span className="votes">
        {vote('confirm', 'Confirm')}
        {vote('dispute', 'Dispute')}
      </span>
    )
  }
  return (
    <span className="votes">
      <output className="note">{sighting.myVote === 'confirm' ? 'you confirmed it' : 'you disputed it'}</output>
      {sighting.oneMore && <span className="note">{sighting.oneMore}</span>}
      {sighting.myVote === 'confirm' ? vote('dispute', 'Dispute instead') : vote('confirm', 'Confirm instead')}
      {vote('take_back', 'Take it back')}
    </span>
  )
}
