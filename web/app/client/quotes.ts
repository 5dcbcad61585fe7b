import type { QuoteDraft, QuoteState } from '../../../core/quote/draft.ts'
import type { QuoteListRow, QuoteView } from '../../../core/quote/quote-view.ts'
import type { RevisionDocument } from '../../../core/quote/revision.ts'
import { queryOf, request, requestVersioned, type Versioned } from './request.ts'

export const listQuotes = (filter: { state?: QuoteState | undefined; q?: string | undefined }): Promise<{ rows: QuoteListRow[] }> =>
  request('GET', `/api/quotes${queryOf({ ...filter })}`)
export const createQuote = (body: { customerId: string; draft?: QuoteDraft }): Promise<QuoteView> =>
  request('POST', '/api/quotes', { body })
export const getQuote = (id: string): Promise<Versioned<QuoteView>> => requestVersioned('GET', `/api/quotes/${id}`)
export const saveQuote = (id: string, body: { customerId: string; draft: QuoteDraft }, etag: string): Promise<Versioned<QuoteView>> =>
  requestVersioned('PUT', `/api/quotes/${id}`, { body, etag })
export const issueQuote = (id: string, etag: string): Promise<Versioned<QuoteView>> =>
  requestVersioned('POST', `/api/quotes/${id}/issue`, { etag })
export const withdrawQuote = (id: string): Promise<Versioned<QuoteView>> => requestVersioned('POST', `/api/quotes/${id}/withdraw`)
export const discardQuote = (id: string, etag: string): Promise<null> => request('DELETE', `/api/quotes/${id}`, { etag })
export const renewQuoteLink = (id: string): Promise<QuoteView> => request('POST', `/api/quotes/${id}/link`)
export const getRevision = (id: string, revision: number): Promise<RevisionDocument> =>
  request('GET', `/api/quotes/${id}/revisions/${revision}`)
export const revisionPdfAddress = (id: string, revision: number, paper: 'a4' | 'letter'): string =>
  `/api/quotes/${id}/revisions/${revision}/pdf${queryOf({ paper })}`
export const draftPdfAddress = (id: string): string => `/api/quotes/${id}/draft.pdf`
