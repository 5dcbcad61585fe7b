import { guardedRequest, type Reach } from '../outside/guarded-request.ts'

/** A push service answers within a second; one that dribbles must not hold up the others. */
const MOST_MS = 15_000
/** What it has to say is a status and at most a sentence, of which nothing is read. */
const MOST_ANSWER_BYTES = 16_000

export interface Posted {
  status: number
  /** As the header says it; null where it says nothing. */
  retryAfter: string | null
}

/** Sends bytes to a push service, whose address a browser gave. Errors: those of `guardedRequest`; a timeout after fifteen seconds. */
export async function guardedPost(
  url: URL,
  { headers, body }: { headers: Record<string, string>; body: Uint8Array },
  reach?: Reach,
): Promise<Posted> {
  const sent = { ...headers, 'content-length': String(body.length) }
  const asked = { method: 'POST', headers: sent, body, mostMs: MOST_MS, mostAnswerBytes: MOST_ANSWER_BYTES } as const
  const answer = await guardedRequest(url, asked, reach)
  return { status: answer.status, retryAfter: answer.headers['retry-after'] ?? null }
}
