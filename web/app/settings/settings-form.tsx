import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import type { InstallSettings } from '../../../core/install.ts'
import { updateInstall } from '../client/install.ts'
import { faultsOf, problemOf } from '../client/problem.ts'
import type { Versioned } from '../client/request.ts'
import { Button } from '../parts/button.tsx'
import { MergedTold, StaleTold, type Clash } from '../parts/conflict-told.tsx'
import { countryName } from '../../../core/country-name.ts'
import { mergeTyped } from '../parts/merge.ts'
import { ErrorNotice } from '../parts/states.tsx'
import { sessionQuery } from '../session/session.ts'
import { OwnStoreMark } from './own-store-mark.tsx'
import { SettingsPlace, SettingsPower, SettingsUnits } from './settings-fields.tsx'
import { ModeDialog, SettingsMode } from './settings-mode.tsx'
import { SettingsWaiting } from './settings-waiting.tsx'
import { spellSetting } from './spell-setting.ts'

const LABELS: Record<keyof InstallSettings, string> = {
  name: 'Name', mode: 'This place is a', currency: 'Currency', country: 'Country', timeZone: 'Time zone', units: 'Units', contact: 'Contact', paper: 'Paper', energyPriceMinor: 'Price of a kilowatt hour',
  circuitVoltageV: 'Circuit voltage', circuitCurrentA: 'Circuit current', leastSavingMinor: 'Smallest saving worth waiting for',
} // prettier-ignore

type Read = Versioned<InstallSettings>
type Faults = Record<string, string>

export function SettingsForm({ read, reload }: { read: Read; reload: () => Promise<Read | undefined> }): ReactElement {
  const queries = useQueryClient()
  const [based, setBased] = useState(read)
  const [draft, setDraft] = useState(read.value)
  const [typed, setTyped] = useState<Faults>({})
  const [clashes, setClashes] = useState<Clash[] | null>(null)
  const [modeAsked, setModeAsked] = useState(false)
  const save = useMutation({
    mutationFn: () => updateInstall(draft, based.etag),
    onSettled: () => setModeAsked(false),
    onSuccess: async () => {
      setClashes(null)
      const newest = await reload()
      if (newest) setBased(newest)
      await queries.invalidateQueries({ queryKey: sessionQuery.queryKey })
    },
  })
  const compare = useMutation({
    mutationFn: reload,
    onSuccess: (newest) => {
      if (!newest) return
      const { merged, clashes: both } = mergeTyped(based.value, draft, newest.value)
      setClashes(both.map((key) => ({ label: LABELS[key], mine: spellSetting(draft, key), theirs: spellSetting(newest.value, key) })))
      setBased(newest)
      setDraft(merged)
      save.reset()
    },
  })
  const set = (part: Partial<InstallSettings>): void => {
    if (save.isSuccess) save.reset()
    setDraft({ ...draft, ...part })
  }
  const bad = Object.values(typed).filter((fault) => fault !== '').length + (countryName(draft.country) === null ? 1 : 0)
  const stale = save.error !== null && problemOf(save.error).status === 412
  const faults = { ...faultsOf(save.error), ...Object.fromEntries(Object.entries(typed).filter(([, fault]) => fault !== '')) }
  return (
    <form
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        if (bad > 0 || save.isPending) return
        if (draft.mode === based.value.mode) save.mutate()
        else setModeAsked(true)
      }}
    >
      <SettingsPlace draft={draft} faults={faults} set={set} />
      <SettingsMode draft={draft} faults={faults} set={set} />
      {draft.mode === 'store' && <OwnStoreMark />}
      <SettingsUnits draft={draft} faults={faults} set={set} />
      {draft.mode === 'club' && (
        <SettingsWaiting
          draft={draft}
          faults={faults}
          set={set}
          onFault={(fault) => setTyped({ ...typed, leastSavingMinor: fault ?? '' })}
        />
      )}
      <SettingsPower draft={draft} faults={faults} set={set} onFault={(field, fault) => setTyped({ ...typed, [field]: fault ?? '' })} />
      {stale ? (
        <StaleTold busy={compare.isPending} onCompare={() => compare.mutate()} />
      ) : clashes ? (
        <MergedTold clashes={clashes} />
      ) : (
        <ErrorNotice error={save.error} shown={[...Object.keys(LABELS), 'units.system', 'units.gallon', 'units.decimal']} />
      )}
      <p className="acts">
        <Button look="main" type="submit" busy={save.isPending} off={bad > 0}>
          Save the settings
        </Button>
        <output>{save.isSuccess ? 'Saved.' : ''}</output>
        {bad > 0 && <span className="reason">A field above needs another look.</span>}
      </p>
      <ModeDialog
        asked={modeAsked ? draft.mode : null}
        busy={save.isPending}
        onClose={() => setModeAsked(false)}
        onChange={() => save.mutate()}
      />
    </form>
  )
}
