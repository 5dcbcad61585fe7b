import { ProblemError, readProblem } from '../client/problem.ts'
import { draftPdfAddress } from '../client/quotes.ts'
import { queryOf } from '../client/request.ts'

/** The draft as a PDF. Throws ProblemError where the server refuses or is not reached. */
export async function getDraftPaper(quoteId: string, paper: 'a4' | 'letter'): Promise<Blob> {
  const response = await fetch(draftPdfAddress(quoteId) + queryOf({ paper }), { credentials: 'same-origin' }).catch(() => null)
  if (!response) throw new ProblemError(readProblem(0, null))
  if (!response.ok) throw new ProblemError(readProblem(response.status, await response.json().catch(() => null)))
  return response.blob()
}
