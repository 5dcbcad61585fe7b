import { useQuery } from '@tanstack/react-query'
import { storeCurrency } from '../../../core/pricing/foreign-stores.ts'
import { useCurrency } from '../session/session.ts'
import { storesQuery } from './stores-query.ts'

/** The currency that a store prints its prices in, by its id; the install's where the store is not known. */
export function useStoreCurrency(): (storeId: string) => string {
  const home = useCurrency()
  const stores = useQuery(storesQuery).data ?? []
  return (storeId) => storeCurrency(stores.find(({ id }) => id === storeId) ?? {}, home)
}
