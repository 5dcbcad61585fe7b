import type { ReactElement } from 'react'
import type { Install } from '../../../core/install.ts'
import { Button } from '../parts/button.tsx'
import { ChoiceField } from '../parts/choice-fields.tsx'
import { Dialog } from '../parts/dialog.tsx'
import type { SettingsPartProps } from './settings-fields.tsx'

type Mode = Install['mode']

const CHANGES: Record<Mode, string> = {
  club: 'Quotes are made of everyone’s stores, at the prices that members saw.',
  store: 'Quotes are made of the own price list alone, and name no other store and no price seen there.',
}

/** Whether quotes are made of what members saw, or of the own price list. */
export function SettingsMode({ draft, faults, set }: SettingsPartProps): ReactElement {
  return (
    <div className="lone">
      <ChoiceField
        label="This place is a"
        value={draft.mode}
        onChange={(mode) => set({ mode })}
        fault={faults['mode']}
        help={CHANGES[draft.mode]}
        options={[
          { value: 'club', label: 'Club' },
          { value: 'store', label: 'Store' },
        ]}
      />
    </div>
  )
}

interface DialogProps {
  /** What it is to be; null: closed. */
  asked: Mode | null
  busy: boolean
  onClose: () => void
  onChange: () => void
}

/** Every open quote is priced anew: that is asked before it is done. */
export function ModeDialog({ asked, busy, onClose, onChange }: DialogProps): ReactElement {
  return (
    <Dialog
      open={asked !== null}
      title={asked === null ? '' : `Run this place as a ${asked}?`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Go back</Button>
          <Button look="main" busy={busy} onClick={onChange}>
            Save it as a {asked}
          </Button>
        </>
      }
    >
      {asked !== null && <p>{CHANGES[asked]}</p>}
      <p>Drafts are priced that way from now on. Quotes that were issued stay as they are, and nothing stored is lost.</p>
      {asked === 'store' && (
        <p>Mark one store as your own under Stores, and fill its price list: until then no quote has a price, and none can be issued.</p>
      )}
    </Dialog>
  )
}
