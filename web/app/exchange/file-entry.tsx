import { useState, type ReactElement } from 'react'
import { Field } from '../parts/field.tsx'

export interface ChosenFile {
  name: string
  content: Blob
}

/** A file, or rows that are pasted: the later of the two counts. */
export function FileEntry({ onChange }: { onChange: (file: ChosenFile | null) => void }): ReactElement {
  const [pasted, setPasted] = useState('')
  const [chosen, setChosen] = useState<string | null>(null)
  return (
    <>
      <Field
        label="Choose a file"
        help={chosen ? `Chosen: ${chosen}` : 'CSV with commas, semicolons or tabs between the columns, or JSON.'}
        className="file"
      >
        {({ id, describedBy }) => (
          <input
            id={id}
            type="file"
            accept=".csv,.tsv,.txt,.json,text/csv,application/json"
            aria-describedby={describedBy}
            onChange={(event) => {
              const file = event.target.files?.[0]
              setPasted('')
              setChosen(file?.name ?? null)
              onChange(file === undefined ? null : { name: file.name, content: file })
            }}
          />
        )}
      </Field>
      <Field label="Or paste the rows" help="The first row names the columns." className="csv">
        {({ id, describedBy }) => (
          <div className="entry">
            <textarea
              id={id}
              value={pasted}
              rows={6}
              spellCheck={false}
              aria-describedby={describedBy}
              onChange={(event) => {
                const text = event.target.value
                setPasted(text)
                setChosen(null)
                onChange(text.trim() === '' ? null : { name: 'Pasted rows', content: new Blob([text]) })
              }}
            />
          </div>
        )}
      </Field>
    </>
  )
}
