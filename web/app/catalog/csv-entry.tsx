import { useState, type ReactElement } from 'react'
import { Field } from '../parts/field.tsx'

/** Rows from a file or pasted; the text stays editable, so that a fault is mended on the spot. */
export function CsvEntry({ csv, onChange }: { csv: string; onChange: (text: string) => void }): ReactElement {
  const [fileName, setFileName] = useState<string | null>(null)
  const readFile = async (file: File | undefined): Promise<void> => {
    if (!file) return
    onChange(await file.text())
    setFileName(file.name)
  }
  return (
    <>
      <Field label="Choose a file" help={fileName ? `Read: ${fileName}` : 'Comma, semicolon or tab between the columns.'} className="file">
        {({ id, describedBy }) => (
          <input
            id={id}
            type="file"
            accept=".csv,.tsv,.txt,text/csv"
            aria-describedby={describedBy}
            onChange={(event) => void readFile(event.target.files?.[0])}
          />
        )}
      </Field>
      <Field label="Or paste the rows" help="The first row names the columns." className="csv">
        {({ id, describedBy }) => (
          <div className="entry">
            <textarea
              id={id}
              value={csv}
              rows={8}
              spellCheck={false}
              aria-describedby={describedBy}
              onChange={(event) => onChange(event.target.value)}
            />
          </div>
        )}
      </Field>
    </>
  )
}
