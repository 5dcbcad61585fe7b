import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import type { ImportFault, ImportReport } from '../../../core/catalog/import-report.ts'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { Told } from '../parts/told.tsx'

const COLUMNS: Array<Column<ImportFault>> = [
  { key: 'row', head: 'Line', num: true, phone: 'figure', cell: ({ row }) => row },
  { key: 'column', head: 'Column', rowHead: true, phone: 'lead', cell: ({ column }) => column ?? 'whole line' },
  { key: 'message', head: 'What is wrong, and how to mend it', phone: 'below', cell: ({ message }) => message },
]

/** What a run found or did, with every fault by its line. */
export function ImportOutcome({ report }: { report: ImportReport }): ReactElement {
  const faults = report.faults.length
  const title = report.applied ? 'Written' : faults > 0 ? 'Nothing was written' : 'Nothing was written yet'
  return (
    <section className="form" aria-labelledby="outcome-head">
      <div className="sechead">
        <h2 id="outcome-head">{report.applied ? 'Imported' : 'What the rows would do'}</h2>
      </div>
      <Told kind={faults > 0 ? 'stop' : 'note'} title={title} live>
        <p className="counts">
          <span>{report.rows === 1 ? '1 row' : `${report.rows} rows`}</span>
          <span>{report.creates} new</span>
          <span>{report.updates} changed</span>
          <span>{report.unchanged} as they are</span>
          <span>
            {faults}
            {report.more ? ' or more' : ''} with a fault
          </span>
        </p>
        {report.applied && (
          <p>
            <Link to="/catalog" search={{}}>
              See the catalog
            </Link>
          </p>
        )}
      </Told>
      {faults > 0 && (
        <RuledTable
          caption="Faults by line"
          columns={COLUMNS}
          rows={report.faults}
          rowKey={({ row, column, message }) => `${row} ${column} ${message}`}
        />
      )}
      {report.more && <p className="quiet">More faults were found than are listed. Mend these, then try again.</p>}
    </section>
  )
}
