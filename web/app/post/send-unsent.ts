import { problemOf, type Problem } from '../client/problem.ts'
import type { Doubt } from '../../../core/pricing/sighting.ts'
import { postSighting, type SightingBody } from '../client/sightings.ts'
import { dropUnsent, keepUnsent, readUnsent, type Keep } from './unsent.ts'

/** What becomes of one sighting after a try: it is in, it is refused for good, or it waits for another try. */
export type Outcome = { kind: 'posted'; doubt: string | null } | { kind: 'refused'; problem: Problem } | { kind: 'waits'; problem: Problem }

/**
 * A refusal of the content stays a refusal however often it is sent; anything else may pass: no signal, a busy server, a session that ended.
 *
 * @example outcomeOf(readProblem(503, null)).kind // 'waits'
 */
export function outcomeOf(problem: Problem): Outcome {
  const forGood = [400, 403, 404, 409, 413, 422].includes(problem.status)
  return { kind: forGood ? 'refused' : 'waits', problem }
}

/** The server's answer says whether the sighting counts at once. */
type Post = (body: SightingBody) => Promise<{ doubt: Doubt | null }>

async function sendOne(body: SightingBody, post: Post): Promise<Outcome> {
  try {
    const { doubt } = await post(body)
    return { kind: 'posted', doubt: doubt?.words ?? null }
  } catch (error) {
    return outcomeOf(problemOf(error))
  }
}

const became = new Map<string, Outcome>()
/** What became of a sighting at the last try from this page, by its id: known before the queue says that it changed. */
export const outcomeNow = (id: string): Outcome | undefined => became.get(id)

/**
 * Sends what waits, oldest first, and stops at the first that must wait: the rest would wait for the same reason.
 * Refused ones stay in the list with their reason until their reporter deals with them. Returns what became of each id.
 */
export async function sendQueue(personId: string, post: Post, keep: Keep): Promise<Map<string, Outcome>> {
  const outcomes = new Map<string, Outcome>()
  for (const item of readUnsent(personId, keep)) {
    if (item.refused || !isKept(personId, item.sighting.id, keep)) continue
    const outcome = await sendOne(item.sighting, post)
    outcomes.set(item.sighting.id, outcome)
    became.set(item.sighting.id, outcome)
    if (outcome.kind === 'posted') dropUnsent(personId, item.sighting.id, keep)
    if (outcome.kind === 'refused') {
      const { title, detail, errors } = outcome.problem
      keepUnsent(personId, { ...item, refused: { title, detail, errors } }, keep)
    }
    if (outcome.kind === 'waits') break
  }
  return outcomes
}

const isKept = (personId: string, id: string, keep: Keep): boolean => readUnsent(personId, keep).some(({ sighting }) => sighting.id === id)

let running: Promise<unknown> = Promise.resolve()

/** As `sendQueue`, one at a time on this page, and one page at a time where the browser can lock. Sending twice would be harmless, not free. */
export const sendUnsent = (personId: string): Promise<Map<string, Outcome>> =>
  alone(personId, () => sendQueue(personId, postSighting, localStorage))

/**
 * Takes one out of the queue before it is sent, never while it is on its way. False where it was sent meanwhile: then nothing is removed.
 */
export const removeUnsent = (personId: string, id: string): Promise<boolean> =>
  alone(personId, async () => {
    if (!isKept(personId, id, localStorage)) return false
    dropUnsent(personId, id)
    return true
  })

function alone<Value>(personId: string, work: () => Promise<Value>): Promise<Value> {
  const next = running.then(() => ('locks' in navigator ? navigator.locks.request(`driploop.unsent.${personId}`, work) : work()))
  running = next.catch(() => undefined)
  return next
}
