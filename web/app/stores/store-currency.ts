import { useQuery } from '@tanstack/react-query'
import { sayMoney } from '../../../core/money.ts'
import { storeCurrency } from '../../../core/pricing/foreign-stores.ts'
import { useCurrency } from '../session/session.ts'
import { storesQuery } from './stores-query.ts'

/** The currency that a store prints its prices in, by its id; the install's where the store is not known. */
export function useStoreCurrency(): (storeId: string) => string {
  const home = useCurrency()
  const stores = useQuery(storesQuery).data ?? []
  return (storeId) => storeCurrency(stores.find(({ id }) => id === storeId) ?? {}, home)
}

/** An amount as a store prints it: with its sign at home, with its code where the store's currency is another. */
export function useStoreMoney(): (minor: number, storeId: string) => string {
  const home = useCurrency()
  const currencyOf = useStoreCurrency()
  return (minor, storeId) => sayMoney(minor, currencyOf(storeId), { home })
}
