import { useState, type ReactElement } from 'react'
import type { Slot } from '../../../core/catalog/kinds.ts'
import type { BuildLine } from '../../../core/quote/draft.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'
import { Button } from '../parts/button.tsx'
import { TextField } from '../parts/field.tsx'
import { newId } from '../post/new-id.ts'
import { usePendingAnswer, type PutAnswer } from './pending-answer.ts'
import { useAnswerSlot } from './use-answer-slot.ts'

export interface SlotFormProps {
  build: WorkedBuild
  slot: Slot
  /** What fills the slot now. */
  lines: BuildLine[]
}

/** "Not needed, because …": an answer like any other, printed with its reason. */
export function NotNeededForm({ build, slot, lines }: SlotFormProps): ReactElement {
  const answerSlot = useAnswerSlot(build, slot)
  const [reason, setReason] = useState('')
  const [tried, setTried] = useState(false)
  const put: PutAnswer = (then) => {
    setTried(true)
    if (reason.trim() === '') return
    answerSlot({
      do: 'put_line',
      buildId: build.id,
      line: { id: newId(), answer: 'not_needed', slot, reason: reason.trim() },
      replaces: lines.map((line) => line.id),
    })
    then()
  }
  usePendingAnswer(reason.trim() !== '', put)
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault()
        put(() => {})
      }}
    >
      <TextField
        label="Not needed, because"
        value={reason}
        maxLength={300}
        fault={tried && reason.trim() === '' ? 'Say why: the customer reads it. For example “rimmed tank, stands on its frame”.' : null}
        onChange={setReason}
      />
      <p>
        <Button type="submit">Say it is not needed</Button>
      </p>
    </form>
  )
}
