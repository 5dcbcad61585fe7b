import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { Button } from '../parts/button.tsx'
import { useDesk } from './desk-context.ts'
import { focusDeskField, placeOfFault, type FaultPlace } from './fault-place.ts'

/** What keeps a quote from being issued, each with the way to where it is put right. */
export function FaultList({ faults }: { faults: ReadonlyArray<{ field: string; message: string }> }): ReactElement | null {
  const { draft } = useDesk().state
  if (faults.length === 0) return null
  return (
    <div role="alert">
      <ul className="fault-list">
        {faults.map(({ field, message }) => {
          const place = placeOfFault(field, draft)
          return (
            <li key={field + message}>
              <span className="fault">{message}</span> {place && <ToPlace place={place} />}
            </li>
          )
        })}
      </ul>
    </div>
  )
}

function ToPlace({ place }: { place: FaultPlace }): ReactElement {
  const { choose, open, state } = useDesk()
  const words = `Go to ${place.words}`
  if (place.at === 'stores') return <Link to="/stores">{words}</Link>
  if (place.at === 'customer')
    return (
      <Link to="/customers/$customerId" params={{ customerId: state.view.customer.id }}>
        {words}
      </Link>
    )
  const go = (): void => {
    if (place.at === 'tank') {
      choose(place.buildId)
      return open({ at: 'cell', buildId: place.buildId, slot: 'hold_water', want: null })
    }
    open(null)
    // The dialog gives the focus back as it closes; the field takes it after that.
    requestAnimationFrame(() => focusDeskField(place.field))
  }
  return (
    <Button small look="plain" onClick={go}>
      {words}
    </Button>
  )
}
