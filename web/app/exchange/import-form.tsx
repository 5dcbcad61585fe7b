import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { KIND_NAMES, KINDS, type Kind } from '../../../core/catalog/kinds.ts'
import type { DataSet } from '../../../core/exchange/data-set.ts'
import { FORMATS_ADDRESS, startImport, templateAddress } from '../client/imports.ts'
import { Button } from '../parts/button.tsx'
import { ChoiceField, SelectField } from '../parts/choice-fields.tsx'
import { OwnStoreTold } from '../price-list/own-store-told.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { ColumnGuide } from './column-guide.tsx'
import { FileEntry, type ChosenFile } from './file-entry.tsx'
import { SET_OPTIONS, setWords } from './set-words.ts'

/** A sighting is of a store that is here: a file makes none. */
function StoresTold(): ReactElement {
  return (
    <p className="note">
      Stores are not imported: a manager enters them under <Link to="/stores">Stores</Link>, by the names that the file has, before its
      sightings are read.
    </p>
  )
}

interface Props {
  /** What every file holds; absent: it is asked. */
  only?: DataSet
  onStarted: (id: string) => void
}

/** What to read, and the file: it is sent and tried, and nothing is written yet. */
export function ImportForm({ only, onStarted }: Props): ReactElement {
  const queries = useQueryClient()
  const [set, setSet] = useState<DataSet>(only ?? 'catalog')
  const [kind, setKind] = useState<Kind | ''>('')
  const [file, setFile] = useState<ChosenFile | null>(null)
  const ofKind = set === 'catalog' && kind !== '' ? kind : null
  const send = useMutation({
    mutationFn: (chosen: ChosenFile) => startImport({ set, kind: ofKind, file: chosen.content, fileName: chosen.name }),
    onSuccess: async ({ id }) => {
      onStarted(id)
      await queries.invalidateQueries({ queryKey: ['imports'] })
    },
  })
  const words = setWords(set, ofKind)
  return (
    <section className="form" aria-labelledby="import-head">
      <div className="sechead">
        <h2 id="import-head">Import</h2>
        <p className="quiet">
          <a href={only === undefined ? FORMATS_ADDRESS : `${FORMATS_ADDRESS}#${only}`}>What the files hold</a>
        </p>
      </div>
      {only === undefined && <ChoiceField label="What the file holds" value={set} options={SET_OPTIONS} onChange={setSet} />}
      {only === undefined && set === 'price_list' && <OwnStoreTold />}
      {set === 'sightings' && <StoresTold />}
      {set === 'catalog' && (
        <SelectField
          label="Kind of every row"
          none="The file says it in a column"
          value={kind}
          options={KINDS.map((value) => ({ value, label: KIND_NAMES[value] }))}
          onChange={setKind}
        />
      )}
      <p>
        <a href={templateAddress(set, ofKind)} download={`driploop-${ofKind ?? set}.csv`}>
          Template for {words}
        </a>
      </p>
      <ColumnGuide set={set} kind={ofKind} words={words} />
      <FileEntry
        onChange={(chosen) => {
          setFile(chosen)
          send.reset()
        }}
      />
      <ErrorNotice error={send.error} />
      <p className="acts">
        <Button look="main" busy={send.isPending} off={file === null} onClick={() => file && send.mutate(file)}>
          {send.isPending ? 'Sending the file' : 'Try it, write nothing'}
        </Button>
        {file === null && <span className="reason">Choose a file or paste rows first.</span>}
      </p>
    </section>
  )
}
