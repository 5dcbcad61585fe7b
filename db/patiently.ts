import { setTimeout as pause } from 'node:timers/promises'

const TURNS = 10
const BETWEEN_TURNS_MS = 1_000
export const SERIALIZATION_FAILURE = '40001'
/** What another turn may not meet: a lock not to be had, two that waited for one another, and a row or what it refers to changed beside the work (PostgreSQL, appendix A). */
const PASSING = new Set(['55P03', '40P01', SERIALIZATION_FAILURE, '23503'])

/**
 * Does whole transactions again while somebody else's work is in their way.
 *
 * Errors: the work's own, that of the last turn, and at once whatever would be the same another time.
 */
export async function patiently<Value>(work: () => Promise<Value>, betweenTurnsMs = BETWEEN_TURNS_MS): Promise<Value> {
  for (let turn = 1; ; turn += 1) {
    try {
      return await work()
    } catch (error) {
      if (turn === TURNS || !PASSING.has((error as { code?: string }).code ?? '')) throw error
      await pause(betweenTurnsMs)
    }
  }
}
