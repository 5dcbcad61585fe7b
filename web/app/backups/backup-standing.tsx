import type { ReactElement } from 'react'
import type { BackupsView } from '../client/backups.ts'
import { Told } from '../parts/told.tsx'
import { sayEvery, sayMoment } from './backup-words.ts'

/** When everything was last safe, and a warning where that is too long ago. */
export function BackupStanding({ backups, timeZone }: { backups: BackupsView; timeZone: string }): ReactElement {
  const { lastSuccessAt, lastFailure, overdue, everyMinutes } = backups
  const failed = lastFailure && `The try of ${sayMoment(lastFailure.at, timeZone)} failed. ${lastFailure.message}`
  const last =
    lastSuccessAt === null
      ? 'None has been made here yet.'
      : `All that is stored was last in a backup on ${sayMoment(lastSuccessAt, timeZone)}.`
  if (lastSuccessAt === null && failed === null)
    return (
      <Told kind="warn" title="None has been made here yet" live>
        <p>
          The first is made by itself within minutes of a start, the next {sayEvery(everyMinutes)}; or make one now. After a restore the
          file that was put back is the only copy until then: keep it.
        </p>
      </Told>
    )
  if (overdue)
    return (
      <Told kind="stop" title={lastSuccessAt === null ? 'No backup could be made here yet' : 'The newest backup is too old'} live>
        <p>
          {lastSuccessAt !== null && `${last} `}One is due {sayEvery(everyMinutes)}. {failed ?? 'Make one now.'}
        </p>
      </Told>
    )
  if (failed !== null)
    return (
      <Told kind="warn" title="The last try failed" live>
        <p>
          {failed} {last}
        </p>
      </Told>
    )
  return <p className="backup-standing">{last}</p>
}

/** What the operator of either database should know of a power cut. */
export function PowerCut({ engine }: Pick<BackupsView, 'engine'>): ReactElement {
  if (engine === 'postgres')
    return (
      <p className="quiet">
        PostgreSQL keeps what it acknowledged through a power cut, as far as its disk does. A broken disk takes both: keep a copy elsewhere.
      </p>
    )
  return (
    <p className="quiet">
      The embedded database loses nothing when its process is killed, but it is not shown to survive a power cut: then up to the last 15
      minutes may be gone, and in the worst case a backup has to be put back. A store that lives from it should use PostgreSQL or a battery
      backup.
    </p>
  )
}
