import { problemOf } from '../client/problem.ts'
import type { Keep } from '../post/unsent.ts'

const PREFIX = 'driploop.answer.'

/**
 * A reading whose last answer stays on this device, and is given again where the server cannot be reached: what the posting screen needs to open in
 * an aisle without a signal. A refusal is a refusal and never covered up.
 *
 * @example const listOfStores = keptAnswer('stores', listStores) // without a signal, the stores as they were last read here
 */
export function keptAnswer<Value>(name: string, read: () => Promise<Value>, keep: Keep = localStorage): () => Promise<Value> {
  return async () => {
    try {
      const answer = await read()
      tryToKeep(keep, name, answer)
      return answer
    } catch (error) {
      const kept = problemOf(error).status === 0 ? keep.getItem(`${PREFIX}${name}`) : null
      if (kept === null) throw error
      return JSON.parse(kept) as Value
    }
  }
}

/** Storage that is full or forbidden costs only the opening without a signal. */
function tryToKeep(keep: Keep, name: string, answer: unknown): void {
  try {
    keep.setItem(`${PREFIX}${name}`, JSON.stringify(answer))
  } catch {
    keep.removeItem(`${PREFIX}${name}`)
  }
}

/** Deletes every kept answer: after signing out, and where a session turns out to be over. */
export function forgetAnswers(storage: Storage = localStorage): void {
  for (const key of Object.keys(storage)) if (key.startsWith(PREFIX)) storage.removeItem(key)
}
