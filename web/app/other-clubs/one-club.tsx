import { useMutation, useQuery } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import type { OtherClub, OtherClubStore } from '../../../core/other-clubs/other-club.ts'
import { sayMoment } from '../backups/backup-words.ts'
import { matchOtherStore, readOtherClub, removeOtherClub, type OtherClubsView } from '../client/other-clubs.ts'
import { Button } from '../parts/button.tsx'
import { SelectField } from '../parts/choice-fields.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { useInstall } from '../session/session.ts'
import { storesQuery } from '../stores/stores-query.ts'
import { isBeingRead, sayUse } from './club-words.ts'

interface Props {
  club: OtherClub
  onAnswer: (view: OtherClubsView) => void
}

/** One club: how its last reading went, and which of its stores are ours. */
export function OneClub({ club, onAnswer }: Props): ReactElement {
  const { timeZone } = useInstall()
  const [leaving, setLeaving] = useState(false)
  const again = useMutation({ mutationFn: () => readOtherClub(club.id), onSuccess: onAnswer })
  const remove = useMutation({ mutationFn: () => removeOtherClub(club.id), onSuccess: onAnswer })
  return (
    <article className="one-club" aria-labelledby={`club-${club.id}`}>
      <h3 id={`club-${club.id}`}>{club.name}</h3>
      <p className="quiet club-place">{club.address}</p>
      <p aria-live="polite">
        {isBeingRead(club) ? 'Being read for the first time…' : club.readAt && `Read ${sayMoment(club.readAt, timeZone)}. ${sayUse(club)}`}
      </p>
      {club.fault !== null && club.triedAt !== null && (
        <p className="fault">
          The try of {sayMoment(club.triedAt, timeZone)} brought nothing. {club.fault}
        </p>
      )}
      {club.stores.length > 0 && <Stores club={club} onAnswer={onAnswer} />}
      <ErrorNotice error={again.error ?? remove.error} />
      <p className="acts">
        <Button small onClick={() => setLeaving(true)}>
          Read no longer<span className="sr"> {club.name}</span>
        </Button>
        <Button small busy={again.isPending} onClick={() => again.mutate()}>
          Read now<span className="sr"> {club.name}</span>
        </Button>
      </p>
      <Dialog
        open={leaving}
        title={`Read ${club.name} no longer?`}
        onClose={() => setLeaving(false)}
        actions={
          <>
            <Button onClick={() => setLeaving(false)}>Leave it</Button>
            <Button
              look="main"
              onClick={() => {
                setLeaving(false)
                remove.mutate()
              }}
            >
              Read no longer
            </Button>
          </>
        }
      >
        <p>What it told is forgotten, and so is which of its stores are yours. Issued quotes keep what they were issued with.</p>
      </Dialog>
    </article>
  )
}

function Stores({ club, onAnswer }: Props): ReactElement {
  const stores = useQuery(storesQuery)
  const match = useMutation({
    mutationFn: ({ key, storeId }: { key: string; storeId: string | null }) => matchOtherStore(club.id, key, storeId),
    onSuccess: onAnswer,
  })
  const ours = (stores.data ?? []).filter(({ archived }) => !archived)
  const said = ({ name, town, country, prices }: OtherClubStore): string =>
    `${[name, town, country].filter(Boolean).join(', ')} · ${prices} ${prices === 1 ? 'price' : 'prices'}`
  return (
    <details className="club-stores" open={club.stores.every(({ storeId }) => storeId === null)}>
      <summary>
        Its stores: {club.stores.filter(({ storeId }) => storeId !== null).length} of {club.stores.length} are stores of yours
      </summary>
      <div className="club-matches">
        {club.stores.map((store) => (
          <SelectField
            key={store.key}
            label={said(store)}
            value={store.storeId ?? ''}
            none="none of ours"
            options={ours.map(({ id, name, town }) => ({ value: id, label: town ? `${name}, ${town}` : name }))}
            onChange={(storeId) => match.mutate({ key: store.key, storeId: storeId || null })}
          />
        ))}
      </div>
      <ErrorNotice error={match.error ?? stores.error} />
    </details>
  )
}
