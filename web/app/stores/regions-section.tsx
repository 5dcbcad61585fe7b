import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import type { Region } from '../../../core/catalog/region.ts'
import type { Store } from '../../../core/catalog/store.ts'
import { faultsOf } from '../client/problem.ts'
import { countRegionWatches, createRegion, deleteRegion, updateRegion, type RegionBody } from '../client/stores.ts'
import { Button } from '../parts/button.tsx'
import { TickField } from '../parts/choice-fields.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { TextField } from '../parts/field.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { sayWatchesEnd, sayWatchesMove } from './region-words.ts'
import { regionsQuery } from './stores-query.ts'
import './stores.css'

/** Sets of stores: the board is narrowed to one, and a quote names one as where the customer buys. */
export function RegionsSection({ stores }: { stores: readonly Store[] }): ReactElement {
  const regions = useQuery(regionsQuery)
  const queries = useQueryClient()
  const [edited, setEdited] = useState<Region | 'new' | null>(null)
  const refresh = () => queries.invalidateQueries({ queryKey: ['regions'] })
  const [asked, setAsked] = useState<Region | null>(null)
  const nameOf = (id: string): string => stores.find((store) => store.id === id)?.name ?? 'a store'
  const columns: Array<Column<Region>> = [
    { key: 'name', head: 'Region', rowHead: true, phone: 'lead', cell: ({ name }) => name },
    { key: 'stores', head: 'Stores', phone: 'below', cell: ({ storeIds }) => storeIds.map(nameOf).join(', ') },
    {
      key: 'acts',
      head: <span className="sr">Change</span>,
      end: true,
      phone: 'acts',
      cell: (region) => (
        <>
          <Button small onClick={() => setEdited(region)}>
            Change<span className="sr"> {region.name}</span>
          </Button>{' '}
          <Button small look="plain" onClick={() => setAsked(region)}>
            Take out<span className="sr"> {region.name}</span>
          </Button>
        </>
      ),
    },
  ]
  return (
    <section className="store-part" aria-labelledby="regions-head">
      <div className="sechead">
        <h2 id="regions-head">Regions</h2>
        <p className="quiet">Stores that customers of one place go to. Prices are filtered by them, and a quote may name one.</p>
      </div>
      <ErrorNotice error={regions.error} />
      {regions.data && regions.data.length > 0 && (
        <RuledTable caption="Regions" columns={columns} rows={regions.data} rowKey={({ id }) => id} />
      )}
      <RemoveRegion region={asked} onClose={() => setAsked(null)} onDone={refresh} />
      {edited ? (
        <RegionForm
          key={edited === 'new' ? 'new' : edited.id}
          region={edited === 'new' ? null : edited}
          stores={stores}
          onDone={async () => {
            setEdited(null)
            await refresh()
          }}
          onLeave={() => setEdited(null)}
        />
      ) : (
        <p className="acts">
          <Button onClick={() => setEdited('new')}>Group stores as a region</Button>
        </p>
      )}
    </section>
  )
}

/** Says what hangs on it: watches of it end, and cannot be told of anywhere else by themselves. */
function RemoveRegion({
  region,
  onClose,
  onDone,
}: {
  region: Region | null
  onClose: () => void
  onDone: () => Promise<void>
}): ReactElement {
  const remove = useMutation({
    mutationFn: deleteRegion,
    onSuccess: async () => {
      onClose()
      await onDone()
    },
  })
  return (
    <Dialog
      open={region !== null}
      title={`Take out ${region?.name ?? ''}?`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Keep it</Button>
          <Button look="main" busy={remove.isPending} onClick={() => region && remove.mutate(region.id)}>
            Take it out
          </Button>
        </>
      }
    >
      <p>
        <WatchesEnd regionId={region?.id ?? null} /> Its stores and their prices stay, and quotes keep the stores ticked in them.
      </p>
      <p>This cannot be undone: a new region of the same name brings no watch back.</p>
      <ErrorNotice error={remove.error} />
    </Dialog>
  )
}

const watchesOf = (regionId: string | null) => ({
  queryKey: ['regions', regionId, 'watches'],
  queryFn: () => countRegionWatches(regionId ?? ''),
  enabled: regionId !== null,
  staleTime: 0,
})

function WatchesEnd({ regionId }: { regionId: string | null }): ReactElement {
  const { data: count } = useQuery(watchesOf(regionId))
  return <>{sayWatchesEnd(count)}</>
}

/** What a change of its stores does to the watches of a region. */
function WatchesMove({ regionId }: { regionId: string }): ReactElement | null {
  const { data: count } = useQuery(watchesOf(regionId))
  if (!count) return null
  return <p className="note">{sayWatchesMove(count)}</p>
}

interface FormProps {
  region: Region | null
  stores: readonly Store[]
  onDone: () => Promise<void>
  onLeave: () => void
}

function RegionForm({ region, stores, onDone, onLeave }: FormProps): ReactElement {
  const [body, setBody] = useState<RegionBody>({ name: region?.name ?? '', storeIds: region?.storeIds ?? [] })
  const save = useMutation({ mutationFn: () => (region ? updateRegion(region, body) : createRegion(body)), onSuccess: onDone })
  const faults = faultsOf(save.error)
  const shown = stores.filter((store) => !store.archived || body.storeIds.includes(store.id))
  const toggle = (id: string, on: boolean): void =>
    setBody({ ...body, storeIds: on ? [...body.storeIds, id] : body.storeIds.filter((one) => one !== id) })
  return (
    <form
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        if (!save.isPending) save.mutate()
      }}
    >
      <TextField
        label="Name of the region"
        value={body.name}
        maxLength={80}
        fault={faults['name']}
        onChange={(name) => setBody({ ...body, name })}
      />
      <fieldset className="field ticks">
        <legend className="label">Its stores</legend>
        {shown.map(({ id, name }) => (
          <TickField key={id} label={name} checked={body.storeIds.includes(id)} onChange={(on) => toggle(id, on)} />
        ))}
        {faults['storeIds'] && <p className="fault">{faults['storeIds']}</p>}
      </fieldset>
      {region && <WatchesMove regionId={region.id} />}
      <ErrorNotice error={save.error} shown={['name', 'storeIds']} />
      <p className="acts">
        <Button onClick={onLeave}>Leave it</Button>
        <Button look="main" type="submit" busy={save.isPending}>
          {region ? 'Save the region' : 'Add the region'}
        </Button>
      </p>
    </form>
  )
}
