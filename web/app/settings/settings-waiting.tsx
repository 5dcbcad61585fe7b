import type { ReactElement } from 'react'
import { LEAST_SAVING_MINOR } from '../../../core/install.ts'
import type { SettingsPartProps } from './settings-fields.tsx'
import { SavingField } from './saving-field.tsx'

const NAME = 'Smallest saving worth waiting for'

/** For less than this nobody is told to wait, on screens and on paper. */
export function SettingsWaiting({
  draft,
  faults,
  set,
  onFault,
}: SettingsPartProps & { onFault: (fault: string | null) => void }): ReactElement {
  return (
    <>
      <div className="sechead">
        <h2>Wait or buy</h2>
        <p className="quiet">For the advice beside prices and on quotes.</p>
      </div>
      <div className="lone">
        <SavingField
          label={NAME}
          currency={draft.currency}
          decimal={draft.units.decimal}
          value={draft.leastSavingMinor ?? LEAST_SAVING_MINOR}
          help="Of one line of a quote. Less than 3 % of its price is never waited for."
          fault={faults['leastSavingMinor']}
          onChange={(value, fault) => {
            onFault(fault ?? (value === null ? `${NAME} is empty. Fill it in; 0 for any saving.` : null))
            if (value !== null) set({ leastSavingMinor: value })
          }}
        />
      </div>
    </>
  )
}
