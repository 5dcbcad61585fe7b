import { useState, type ReactElement } from 'react'
import type { CustomerBody } from '../client/customers.ts'
import { faultsByField, problemOf } from '../client/problem.ts'
import { Button } from '../parts/button.tsx'
import { NoteField, TextField } from '../parts/field.tsx'
import { ErrorNotice } from '../parts/states.tsx'

export const EMPTY_CUSTOMER: CustomerBody = { name: '', reach: '', note: '' }
const SHOWN = ['name', 'reach', 'note']

interface Props {
  start: CustomerBody
  error: unknown
  busy: boolean
  saveWords: string
  onSave: (body: CustomerBody) => void
  onCancel: () => void
}

/** Name, how to reach them, a note. What is typed stays until it is saved or put away. */
export function CustomerForm({ start, error, busy, saveWords, onSave, onCancel }: Props): ReactElement {
  const [body, setBody] = useState(start)
  const [tried, setTried] = useState(false)
  const nameless = body.name.trim() === ''
  const problem = error ? problemOf(error) : null
  const faults = problem ? faultsByField(problem) : {}
  const submit = (): void => {
    setTried(true)
    if (!nameless && !busy) onSave({ name: body.name.trim(), reach: body.reach.trim(), note: body.note.trim() })
  }
  return (
    <form
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        submit()
      }}
    >
      <div className="form-row">
        <TextField
          label="Name"
          value={body.name}
          maxLength={120}
          fault={tried && nameless ? 'Name is empty. Write how they want to be addressed.' : faults['name']}
          onChange={(name) => setBody({ ...body, name })}
        />
        <TextField
          label="How to reach them"
          required={false}
          help="E-mail, telephone."
          value={body.reach}
          maxLength={200}
          fault={faults['reach']}
          onChange={(reach) => setBody({ ...body, reach })}
        />
      </div>
      <NoteField
        label="Note"
        required={false}
        value={body.note}
        maxLength={2000}
        fault={faults['note']}
        onChange={(note) => setBody({ ...body, note })}
      />
      {problem?.status !== 412 && <ErrorNotice error={error} shown={SHOWN} />}
      <div className="acts">
        <Button look="main" type="submit" busy={busy}>
          {saveWords}
        </Button>
        <Button look="plain" onClick={onCancel}>
          Put it away
        </Button>
      </div>
    </form>
  )
}
