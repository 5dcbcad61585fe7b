import { useState, type ReactElement } from 'react'
import type { SightingRow } from '../../../core/pricing/record.ts'
import { isAccepted } from '../../../core/pricing/sighting.ts'
import { Button } from '../parts/button.tsx'
import { SightingsTable } from './sightings-table.tsx'

/** Rows that a phone scrolls through without losing the plot; the rest opens on asking. */
const FIRST = 12

function waitingWords(sightings: readonly SightingRow[]): string {
  const waiting = sightings.filter((row) => !row.withdrawn && !isAccepted(row)).length
  if (waiting === 0) return ''
  return waiting === 1 ? ' One waits and is not counted.' : ` ${waiting} wait and are not counted.`
}

/** The address names a sighting: then every row is shown, or its link would lead nowhere. */
const namesOne = (): boolean => window.location.hash.startsWith('#s-')

export function SightingsSection({ sightings }: { sightings: readonly SightingRow[] }): ReactElement {
  const [all, setAll] = useState(namesOne)
  const shown = all ? sightings : sightings.slice(0, FIRST)
  const count = shown.length < sightings.length ? `${shown.length} latest of ${sightings.length}` : `All ${sightings.length}`
  return (
    <section aria-labelledby="sightings-head">
      <div className="sechead">
        <h2 id="sightings-head">Sightings</h2>
        <p className="quiet">
          {count}, newest first.{waitingWords(sightings)}
        </p>
      </div>
      <SightingsTable sightings={shown} />
      {!all && shown.length < sightings.length && (
        <p className="acts after-table">
          <Button small onClick={() => setAll(true)}>
            Show all {sightings.length}
          </Button>
        </p>
      )}
    </section>
  )
}
