import { Link } from '@tanstack/react-router'
import { useQuery } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import { listBackups, type BackupView } from '../client/backups.ts'
import { Button } from '../parts/button.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { Screen } from '../parts/screen.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { useInstall } from '../session/session.ts'
import { BackupStanding, PowerCut } from './backup-standing.tsx'
import { sayBytes, sayEvery, sayMoment, sayReason } from './backup-words.ts'
import { DownloadDialog } from './download-dialog.tsx'
import { MakeBackupForm } from './make-backup-form.tsx'
import './backups.css'

const columnsOf = (timeZone: string, onDownload: (backup: BackupView) => void): Array<Column<BackupView>> => [
  { key: 'when', head: 'Made', rowHead: true, phone: 'lead', cell: ({ madeAt }) => sayMoment(madeAt, timeZone) },
  { key: 'why', head: 'Why', phone: 'below', cell: (backup) => `${sayReason(backup)}${backup.locked ? ', locked' : ''}` },
  { key: 'size', head: 'Size', num: true, phone: 'figure', cell: ({ bytes }) => sayBytes(bytes) },
  {
    key: 'get',
    head: <span className="sr">Download</span>,
    end: true,
    phone: 'acts',
    cell: (backup) => (
      <Button small aria-label={`Download the backup of ${sayMoment(backup.madeAt, timeZone)}`} onClick={() => onDownload(backup)}>
        Download
      </Button>
    ),
  },
]

/** How the copies of everything stand: made by themselves, or now. */
export function BackupsScreen(): ReactElement {
  const { timeZone } = useInstall()
  const backups = useQuery({ queryKey: ['backups'], queryFn: listBackups, staleTime: 0, refetchInterval: 60_000 })
  const [asked, setAsked] = useState<BackupView | null>(null)
  const { data } = backups
  return (
    <Screen title="Backups" above={<Link to="/settings">Settings</Link>} width="narrow">
      <ErrorNotice error={data ? null : backups.error} onRetry={() => void backups.refetch()} />
      {backups.isPending && <LoadingRows what="the backups" rows={4} />}
      {data && <BackupStanding backups={data} timeZone={timeZone} />}
      <MakeBackupForm onMade={() => void backups.refetch()} />
      {data && (
        <section className="form" aria-labelledby="kept-head">
          <div className="sechead">
            <h2 id="kept-head">Kept on the server</h2>
            <p className="quiet">By itself {sayEvery(data.everyMinutes)}, if anything changed</p>
          </div>
          {data.items.length === 0 ? (
            <Empty>No backups yet. The first is made by itself within minutes of a start.</Empty>
          ) : (
            <RuledTable
              caption="Kept backups, newest first"
              columns={columnsOf(timeZone, setAsked)}
              rows={data.items}
              rowKey={({ name }) => name}
            />
          )}
          <p className="quiet">
            In the folder <code>{data.folder}</code>: of each sort the last eight and one a day of seven days, three from before upgrades.
            Older ones make room. Each was read again and found whole before it got its name.
          </p>
          <PowerCut engine={data.engine} />
          <p className="quiet">
            To go on elsewhere: <code>npm run restore</code> with the name of the file, in an install where nobody has an account yet.
          </p>
        </section>
      )}
      <DownloadDialog backup={asked} when={asked ? sayMoment(asked.madeAt, timeZone) : ''} onClose={() => setAsked(null)} />
    </Screen>
  )
}
