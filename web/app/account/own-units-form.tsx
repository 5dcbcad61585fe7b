import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { setOwnUnits } from '../client/session.ts'
import { Button } from '../parts/button.tsx'
import { ChoiceField } from '../parts/choice-fields.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { spellUnits, UnitsFields } from '../parts/units-fields.tsx'
import { sessionQuery, useInstall, usePerson } from '../session/session.ts'

const WHOSE = [
  { value: 'house', label: 'As everyone here' },
  { value: 'own', label: 'My own' },
] as const

/** The units one person reads and types in, on every screen of theirs. */
export function OwnUnitsForm(): ReactElement {
  const { units: stored } = usePerson()
  const house = useInstall().units
  const queries = useQueryClient()
  const [units, setUnits] = useState<ReaderUnits | null>(stored)
  const save = useMutation({
    mutationFn: () => setOwnUnits(units),
    onSuccess: (session) => queries.setQueryData(sessionQuery.queryKey, session),
  })
  const choose = (next: ReaderUnits | null): void => {
    if (save.isSuccess) save.reset()
    setUnits(next)
  }
  return (
    <form
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        if (!save.isPending) save.mutate()
      }}
    >
      <h2>Your units</h2>
      <ChoiceField
        label="Figures are shown"
        value={units === null ? 'house' : 'own'}
        options={WHOSE}
        help={
          units === null ? `Everyone here: ${spellUnits(house)}.` : 'A figure typed with its unit is understood whatever you choose here.'
        }
        onChange={(whose) => choose(whose === 'house' ? null : (units ?? house))}
      />
      {units !== null && <UnitsFields units={units} onChange={choose} />}
      <ErrorNotice error={save.error} />
      <p className="acts">
        <Button type="submit" busy={save.isPending}>
          Save your units
        </Button>
        <output>{save.isSuccess ? 'Saved. Every screen of yours shows them now.' : ''}</output>
      </p>
    </form>
  )
}
