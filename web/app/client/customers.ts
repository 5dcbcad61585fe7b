import type { OwnedLine } from '../../../core/quote/draft.ts'
import type { Customer, QuoteListRow, SetupView } from '../../../core/quote/quote-view.ts'
import { queryOf, request, requestVersioned, type Versioned } from './request.ts'

/** `gear` left out: what is kept stays. */
export type CustomerBody = Pick<Customer, 'name' | 'reach' | 'note'> & { gear?: OwnedLine[] }
export type CustomerView = Customer & { quotes: QuoteListRow[]; setups: SetupView[] }

/** Customers whose name or reach holds the text. */
export const listCustomers = async (q: string): Promise<Customer[]> =>
  (await request<{ items: Customer[] }>('GET', `/api/customers${queryOf({ q })}`)).items

export async function getCustomer(id: string): Promise<Versioned<CustomerView>> {
  const { value, etag } = await requestVersioned<{ customer: Customer; quotes: QuoteListRow[]; setups: SetupView[] }>(
    'GET',
    `/api/customers/${id}`,
  )
  return { value: { ...value.customer, quotes: value.quotes, setups: value.setups }, etag }
}
export const createCustomer = (body: CustomerBody): Promise<Customer> => request('POST', '/api/customers', { body })
export const updateCustomer = (id: string, body: CustomerBody, etag: string): Promise<Customer> =>
  request('PUT', `/api/customers/${id}`, { body, etag })
export const eraseCustomer = (id: string, etag: string): Promise<Customer> => request('POST', `/api/customers/${id}/erase`, { etag })
