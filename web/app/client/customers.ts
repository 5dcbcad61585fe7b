import type { Customer, QuoteListRow, SetupView } from '../../../core/quote/quote-view.ts'
import { queryOf, request, requestVersioned, type Versioned } from './request.ts'

export type CustomerBody = Pick<Customer, 'name' | 'reach' | 'note'>
export type CustomerView = Customer & { quotes: QuoteListRow[]; setups: SetupView[] }

/** Customers whose name or reach holds the text. */
export async function listCustomers(q: string): Promise<Customer[]> {
  const answer = await request<Customer[] | { items?: Customer[]; customers?: Customer[] }>('GET', `/api/customers${queryOf({ q })}`)
  return Array.isArray(answer) ? answer : (answer.items ?? answer.customers ?? [])
}
export const getCustomer = (id: string): Promise<Versioned<CustomerView>> => requestVersioned('GET', `/api/customers/${id}`)
export const createCustomer = (body: CustomerBody): Promise<Customer> => request('POST', '/api/customers', { body })
export const updateCustomer = (id: string, body: CustomerBody, etag: string): Promise<Customer> =>
  request('PUT', `/api/customers/${id}`, { body, etag })
