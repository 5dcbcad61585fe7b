import type { ReactElement } from 'react'
import { ChoiceField } from '../parts/choice-fields.tsx'
import { SYSTEMS } from '../parts/units-fields.tsx'
import { useDesk } from './desk-context.ts'

/** In which units the customer reads paper, page and checklist: theirs, whatever the desk shows. */
export function DocumentUnitsField(): ReactElement {
  const { state, edit } = useDesk()
  const own = state.view.install.units.system
  return (
    <ChoiceField
      label="Figures the customer reads"
      value={state.draft.units ?? own}
      options={SYSTEMS}
      onChange={(units) => edit({ do: 'units', units: units === own ? undefined : units })}
    />
  )
}
