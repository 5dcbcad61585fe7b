import { queryOptions } from '@tanstack/react-query'
import { keptAnswer } from '../offline/kept-answer.ts'
import { listCurrencyRates, listRegions, listStores } from '../client/stores.ts'

/** Every store, archived ones included; screens leave those out where something new is chosen. */
export const storesQuery = queryOptions({ queryKey: ['stores'], queryFn: keptAnswer('stores', listStores), staleTime: 5 * 60_000 })

export const regionsQuery = queryOptions({ queryKey: ['regions'], queryFn: listRegions, staleTime: 5 * 60_000 })
export const currencyRatesQuery = queryOptions({ queryKey: ['currency-rates'], queryFn: listCurrencyRates })
