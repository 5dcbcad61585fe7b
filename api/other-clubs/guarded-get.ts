import { guardedRequest, type Reach } from '../outside/guarded-request.ts'

/** Some five thousand prices with long names; more is no feed of a club. */
const MOST_BYTES = 8_000_000
const MOST_MS = 30_000

export interface Got {
  status: number
  etag: string | null
  body: Buffer
}

/** Reads from another club's address, which a manager entered. Errors: those of `guardedRequest`; a timeout after thirty seconds. */
export async function guardedGet(url: URL, headers: Record<string, string>, reach?: Reach): Promise<Got> {
  const asked = {
    method: 'GET',
    headers: { ...headers, 'accept-encoding': 'identity' },
    mostMs: MOST_MS,
    mostAnswerBytes: MOST_BYTES,
  } as const
  const answer = await guardedRequest(url, asked, reach)
  return { status: answer.status, etag: answer.headers.etag ?? null, body: answer.body }
}
