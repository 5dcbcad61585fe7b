import type { ReactElement } from 'react'
import { civilDateAt, sayDate, yearOf } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import { Button } from '../parts/button.tsx'
import { useInstall, useToday } from '../session/session.ts'
import { useStoreCurrency } from '../stores/store-currency.ts'
import { dropUnsent, type Unsent } from './unsent.ts'
import { useUnsent } from './use-unsent.ts'

/** Sightings this device still holds, with their time: waiting for a signal, or refused with the reason. */
export function UnsentList({ personId, onMend }: { personId: string; onMend: (item: Unsent) => void }): ReactElement | null {
  const items = useUnsent(personId)
  if (items.length === 0) return null
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
          />
        ))}
      </ul>
    </section>
  )
}

function UnsentItem({ item, onMend, onDiscard }: { item: Unsent; onMend: () => void; onDiscard: () => void }): ReactElement {
  const currency = useStoreCurrency()(item.sighting.storeId)
  const { timeZone } = useInstall()
  const thisYear = yearOf(useToday())
  const kept = Date.parse(item.keptAt)
  const time = new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit' }).format(kept)
  const what = `${sayMoney(item.sighting.priceMinor, currency)} for ${item.productName} at ${item.storeName}`
  return (
    <li className={item.refused ? 'refused' : 'held'}>
      <p>
        <strong>{sayMoney(item.sighting.priceMinor, currency)}</strong> {item.productName}, {item.storeName}
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
        <p className="note">Waits for the server; posts once, by itself.</p>
      )}
    </li>
  )
}
