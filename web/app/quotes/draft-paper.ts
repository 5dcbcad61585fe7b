import { getPaper } from '../client/paper.ts'
import { draftPdfAddress } from '../client/quotes.ts'
import { queryOf } from '../client/request.ts'

/** The draft as a PDF. Throws ProblemError where the server refuses or is not reached. */
export const getDraftPaper = async (quoteId: string, paper: 'a4' | 'letter'): Promise<Blob> =>
  (await getPaper(draftPdfAddress(quoteId) + queryOf({ paper }))).bytes
