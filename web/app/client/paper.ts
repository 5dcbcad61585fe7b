import { ProblemError, readProblem } from './problem.ts'

/** Longest that a reader is made to wait for the second try; who is told a longer time is told so. */
const MOST_PATIENCE_S = 15

/** A PDF under the name the server gives it. */
export interface Paper {
  bytes: Blob
  name: string
}

const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms))
const ask = (address: string): Promise<Response | null> => fetch(address, { credentials: 'same-origin' }).catch(() => null)

/** Seconds after which an answer says to come again; null where it does not, or later than anybody waits. */
function patienceS(answer: Response | null): number | null {
  const seconds = Number(answer?.headers.get('retry-after') ?? Number.NaN)
  return answer?.status === 503 && seconds >= 0 && seconds <= MOST_PATIENCE_S ? seconds : null
}

/**
 * A document on paper. Where too many are being made, it is asked for once more after the time the server says.
 *
 * Errors: ProblemError where the server refuses, twice in that case, or is not reached.
 */
export async function getPaper(address: string, sleep: (ms: number) => Promise<void> = wait): Promise<Paper> {
  const first = await ask(address)
  const seconds = patienceS(first)
  if (seconds !== null) await sleep(seconds * 1000)
  const response = seconds === null ? first : await ask(address)
  if (!response) throw new ProblemError(readProblem(0, null))
  if (!response.ok) throw new ProblemError(readProblem(response.status, await response.json().catch(() => null)))
  const name = /filename="([^"]+)"/.exec(response.headers.get('content-disposition') ?? '')?.[1] ?? 'quote.pdf'
  return { bytes: await response.blob(), name }
}
