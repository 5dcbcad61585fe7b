import { useState, type ReactElement } from 'react'
import { civilDateAt, sayDate, yearOf } from '../../../core/dates.ts'
import { Button } from '../parts/button.tsx'
import { Told } from '../parts/told.tsx'
import { useInstall, useToday } from '../session/session.ts'
import { useStoreMoney } from '../stores/store-currency.ts'
import { removeUnsent } from './send-unsent.ts'
import { dropUnsent, keepUnsent, type Unsent } from './unsent.ts'
import { useUnsent } from './use-unsent.ts'

interface Props {
  personId: string
  onMend: (item: Unsent) => void
  /** Told before one is taken out of the queue: what was said of it is true no longer. */
  onRemove: (id: string) => void
}

/** Sightings this device still holds, with their time: waiting for a signal, or refused with the reason. */
export function UnsentList({ personId, onMend, onRemove }: Props): ReactElement | null {
  const items = useUnsent(personId)
  const [removed, setRemoved] = useState<Unsent | null>(null)
  const remove = async (item: Unsent): Promise<void> => {
    onRemove(item.sighting.id)
    if (await removeUnsent(personId, item.sighting.id)) setRemoved(item)
  }
  const putBack = (item: Unsent): void => {
    keepUnsent(personId, item)
    setRemoved(null)
  }
  if (items.length === 0 && removed === null) return null
  return (
    <section aria-labelledby="unsent-head" className="unsent">
      <div className="sechead">
        <h2 id="unsent-head">Kept on this device</h2>
      </div>
      <ul>
        {items.map((item) => (
          <UnsentItem
            key={item.sighting.id}
            item={item}
            onMend={() => onMend(item)}
            onDiscard={() => dropUnsent(personId, item.sighting.id)}
            onRemove={() => void remove(item)}
          />
        ))}
      </ul>
      {removed && <RemovedTold item={removed} onPutBack={() => putBack(removed)} />}
    </section>
  )
}

/** A slip of the thumb is mendable: the sighting as it was, back in the queue. */
function RemovedTold({ item, onPutBack }: { item: Unsent; onPutBack: () => void }): ReactElement {
  const said = useStoreMoney()(item.sighting.priceMinor, item.sighting.storeId)
  return (
    <Told kind="note" title={`Removed: ${said} for ${item.productName} at ${item.storeName}`} live>
      <p>It was not sent and will not be.</p>
      <p>
        <Button small onClick={onPutBack}>
          Put it back
        </Button>
      </p>
    </Told>
  )
}

interface ItemProps {
  item: Unsent
  onMend: () => void
  onDiscard: () => void
  onRemove: () => void
}

function UnsentItem({ item, onMend, onDiscard, onRemove }: ItemProps): ReactElement {
  const said = useStoreMoney()(item.sighting.priceMinor, item.sighting.storeId)
  const { timeZone } = useInstall()
  const thisYear = yearOf(useToday())
  const kept = Date.parse(item.keptAt)
  const time = new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit' }).format(kept)
  const what = `${said} for ${item.productName} at ${item.storeName}`
  return (
    <li className={item.refused ? 'refused' : 'held'}>
      <p>
        <strong>{said}</strong> {item.productName}, {item.storeName}
        <span className="note">
          {' '}
          kept {sayDate(civilDateAt(kept, timeZone), thisYear)}, {time}
        </span>
      </p>
      {item.refused ? (
        <>
          <p className="fault">
            {item.refused.errors.map(({ message }) => message).join(' ') || (item.refused.detail ?? item.refused.title)}
          </p>
          <p className="acts">
            <Button small aria-label={`Mend ${what}`} onClick={onMend}>
              Correct it
            </Button>
            <Button small look="plain" aria-label={`Discard ${what}`} onClick={onDiscard}>
              Discard it
            </Button>
          </p>
        </>
      ) : (
        <>
          <p className="note">Waits for the server; posts once, by itself.</p>
          <p className="acts">
            <Button small look="plain" aria-label={`Remove ${what}`} onClick={onRemove}>
              Remove
            </Button>
          </p>
        </>
      )}
    </li>
  )
}
