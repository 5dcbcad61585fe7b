import { useQuery } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import type { WatchTerms } from '../../../core/pricing/watches/watch.ts'
import { SelectField } from '../parts/choice-fields.tsx'
import { regionsQuery, storesQuery } from '../stores/stores-query.ts'

type Where = Pick<WatchTerms, 'regionId' | 'storeIds'>
/** What is chosen, in one word: a region, a store, or the stores that a watch names already. */
const REGION = 'region '
const STORE = 'store '
const AS_IT_IS = 'several'

interface Props extends Where {
  fault: string | undefined
  onChange: (where: Where) => void
}

/** Anywhere, a region, or one store. Several stores, which a program may have named, stay until something else is chosen. */
export function WhereField({ regionId, storeIds, fault, onChange }: Props): ReactElement {
  const regions = useQuery(regionsQuery)
  const stores = useQuery(storesQuery)
  const [first] = storeIds
  const isMixed = storeIds.length > 1 || (storeIds.length === 1 && regionId !== null)
  const value = isMixed ? AS_IT_IS : regionId !== null ? REGION + regionId : first !== undefined ? STORE + first : ''
  const open = (stores.data ?? []).filter((store) => !store.archived || storeIds.includes(store.id))
  const options = [
    ...(isMixed
      ? [
          {
            value: AS_IT_IS,
            label: storeIds.length > 1 ? `${storeIds.length} stores, as it is now` : 'One store of a region, as it is now',
          },
        ]
      : []),
    ...(regions.data ?? []).map(({ id, name }) => ({ value: REGION + id, label: `${name} (region)` })),
    ...open.map(({ id, name }) => ({ value: STORE + id, label: name })),
  ]
  return (
    <SelectField
      label="Where"
      value={value}
      none="Any store"
      options={options}
      fault={fault}
      onChange={(chosen) => {
        if (chosen === AS_IT_IS) return
        onChange({
          regionId: chosen.startsWith(REGION) ? chosen.slice(REGION.length) : null,
          storeIds: chosen.startsWith(STORE) ? [chosen.slice(STORE.length)] : [],
        })
      }}
    />
  )
}
