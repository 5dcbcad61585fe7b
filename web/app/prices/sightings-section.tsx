import { useEffect, useRef, useState, type ReactElement } from 'react'
import type { SightingRow } from '../../../core/pricing/record.ts'
import { isAccepted } from '../../../core/pricing/sighting.ts'
import { Button } from '../parts/button.tsx'
import type { Behind } from './behind.ts'
import { SightingsTable } from './sightings-table.tsx'

/** Rows that a phone scrolls through without losing the plot; the rest opens on asking. */
const FIRST = 12

function waitingWords(sightings: readonly SightingRow[]): string {
  const waiting = sightings.filter((row) => !row.withdrawn && !isAccepted(row)).length
  if (waiting === 0) return ''
  return waiting === 1 ? ' One waits and is not counted.' : ` ${waiting} wait and are not counted.`
}

/** Whether every sighting of a long record was asked for, and how to ask. */
export interface WholeRecord {
  asked: boolean
  busy: boolean
  ask: () => void
}

/** The address names a sighting: then every row is shown, or its link would lead nowhere. */
export const namesSighting = (): boolean => window.location.hash.startsWith('#s-')

export function SightingsSection({
  sightings,
  total,
  whole,
  behind,
  onAll,
}: {
  sightings: readonly SightingRow[]
  total: number
  whole: WholeRecord
  /** The figure that was opened: its sightings alone are shown. */
  behind: Behind | null
  onAll: () => void
}): ReactElement {
  const [all, setAll] = useState(namesSighting)
  const head = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    if (behind) head.current?.focus()
  }, [behind])
  const shown = behind ? sightings.filter(({ id }) => behind.ids.includes(id)) : all ? sightings : sightings.slice(0, FIRST)
  const count = shown.length < total ? `${shown.length} latest of ${total}` : `All ${total}`
  const showAll = (): void => {
    setAll(true)
    if (sightings.length < total) whole.ask()
  }
  return (
    <section aria-labelledby="sightings-head">
      <div className="sechead">
        <h2 id="sightings-head" ref={head} tabIndex={-1}>
          Sightings
        </h2>
        {behind ? (
          <p className="quiet" role="status">
            {shown.length === 1 ? 'The one' : `The ${shown.length}`} behind {behind.words}, of {total}.
          </p>
        ) : (
          <p className="quiet">
            {count}, newest first.{waitingWords(sightings)}
          </p>
        )}
      </div>
      <SightingsTable sightings={shown} />
      {behind ? (
        <p className="acts after-table">
          <Button small onClick={onAll}>
            Show the newest again
          </Button>
        </p>
      ) : (
        shown.length < total && (
          <p className="acts after-table">
            <Button small busy={whole.asked && whole.busy} onClick={showAll}>
              Show all {total}
            </Button>
          </p>
        )
      )}
    </section>
  )
}
