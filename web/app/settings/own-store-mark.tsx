import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { getStore, updateStore } from '../client/stores.ts'
import { Button } from '../parts/button.tsx'
import { SelectField } from '../parts/choice-fields.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { Told } from '../parts/told.tsx'
import { storesQuery } from '../stores/stores-query.ts'

/** A place that is run as a store needs one store of its own: it is told and marked here, where the mode is chosen. Nothing where there is one. */
export function OwnStoreMark(): ReactElement | null {
  const queries = useQueryClient()
  const stores = useQuery(storesQuery)
  const [chosen, setChosen] = useState('')
  const mark = useMutation({
    mutationFn: async (storeId: string) => {
      const { value, etag } = await getStore(storeId)
      const { id: _id, version: _version, ...fields } = value
      return updateStore(storeId, { ...fields, own: true }, etag)
    },
    onSuccess: ({ name }) => {
      setChosen(name)
      return queries.invalidateQueries({ queryKey: storesQuery.queryKey })
    },
  })
  if (mark.isSuccess) return <output>{chosen} is marked as your own store.</output>
  const open = (stores.data ?? []).filter(({ archived }) => !archived)
  if (!stores.data || open.some(({ own }) => own)) return null
  return (
    <Told kind="warn" title="No store is marked as your own">
      <p>
        Until one is, no quote has a price and none can be issued. {open.length > 0 ? 'Mark it here, or under ' : 'Add yours under '}
        <Link to="/stores">Stores</Link>.
      </p>
      {open.length > 0 && (
        <>
          <SelectField
            label="Your own store"
            none="Choose one"
            value={chosen}
            options={open.map(({ id, name }) => ({ value: id, label: name }))}
            onChange={setChosen}
          />
          <ErrorNotice error={mark.error} />
          <p className="acts">
            <Button busy={mark.isPending} off={chosen === ''} onClick={() => mark.mutate(chosen)}>
              Mark it as our own
            </Button>
          </p>
        </>
      )}
    </Told>
  )
}
