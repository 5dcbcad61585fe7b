import { useState, type ReactElement } from 'react'
import { KIND_NAMES, KINDS, type Kind } from '../../../core/catalog/kinds.ts'
import type { DataSet, ExportSet } from '../../../core/exchange/data-set.ts'
import { exportAddress } from '../client/imports.ts'
import { ChoiceField, SelectField, TickField } from '../parts/choice-fields.tsx'
import { Told } from '../parts/told.tsx'
import { EXPORT_OPTIONS, setWords } from './set-words.ts'

const FORMATS = [
  { value: 'csv', label: 'CSV, for spreadsheets' },
  { value: 'json', label: 'JSON, for programs' },
] as const

/** What to write out, and how; the file is made while it is downloaded. `only`: of what, without being asked. */
export function ExportForm({ only }: { only?: DataSet }): ReactElement {
  const [set, setSet] = useState<ExportSet>(only ?? 'catalog')
  const [kind, setKind] = useState<Kind | ''>('')
  const [format, setFormat] = useState<'csv' | 'json'>('csv')
  const [raw, setRaw] = useState(false)
  const ofKind = set === 'catalog' && kind !== '' ? kind : null
  return (
    <section className="form" aria-labelledby="export-head">
      <div className="sechead">
        <h2 id="export-head">Export</h2>
        <p className="quiet">{set !== 'stores' && 'Importing an export changes nothing.'}</p>
      </div>
      {only === undefined && <ChoiceField label="What to export" value={set} options={EXPORT_OPTIONS} onChange={setSet} />}
      {set === 'catalog' && (
        <SelectField
          label="Kind to export"
          none="Every kind"
          value={kind}
          options={KINDS.map((value) => ({ value, label: KIND_NAMES[value] }))}
          onChange={setKind}
        />
      )}
      <ChoiceField label="Format" value={format} options={FORMATS} onChange={setFormat} />
      {format === 'csv' && (
        <TickField
          label="Raw, for programs"
          help="Otherwise an apostrophe goes before text that a spreadsheet would run as a formula."
          checked={raw}
          onChange={setRaw}
        />
      )}
      {set === 'customers' && (
        <Told kind="warn" title="Names and addresses of people">
          <p>
            Keep the file as carefully as this place does, and delete it when it is done with. The trail of changes notes that you took it.
          </p>
        </Told>
      )}
      {set === 'stores' && <p className="help">Stores are entered one by one under Stores; this file is not read back.</p>}
      <p className="acts">
        <a className="btn" href={exportAddress({ set, kind: ofKind, format, text: raw ? 'raw' : 'safe' })} download>
          Download {setWords(set, ofKind)}
        </a>
      </p>
    </section>
  )
}
