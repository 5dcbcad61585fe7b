import { useState } from 'react'
import { postedNow, type Posted } from './posted.ts'
import { outcomeNow } from './send-unsent.ts'
import { useUnsent } from './use-unsent.ts'

/** What was posted last and what has become of it, kept true while it is shown: "kept on this phone" turns into "posted" by itself. */
export function usePosted(personId: string): [posted: Posted | null, set: (posted: Posted | null) => void] {
  const [posted, setPosted] = useState<Posted | null>(null)
  const queue = useUnsent(personId)
  const now = posted && postedNow(posted, queue, outcomeNow(posted.id))
  if (now !== posted) setPosted(now)
  return [now, setPosted]
}
