/** What JSON can say. */
export type JsonValue = string | number | boolean | null | JsonValue[] | { [key: string]: JsonValue }
export type JsonObject = { [key: string]: JsonValue }

/** `waiting` also says: put back by a server that was stopped. */
export const JOB_STATES = ['waiting', 'running', 'done', 'failed', 'cancelled'] as const
export type JobState = (typeof JOB_STATES)[number]

/** Work that goes on after its request was answered, and after the process that began it has died. */
export interface Job {
  id: string
  /** Which work it is; names the handler. */
  kind: string
  /** What it was asked to do. */
  payload: JsonObject
  state: JobState
  /** Instant from which it may begin, ISO 8601 UTC. */
  dueAt: string
  /** Who asked for it; null for the service itself. */
  startedBy: string | null
  createdAt: string
  endedAt: string | null
  /** How often it was taken up. */
  takes: number
  /** How often a process died over it. */
  deaths: number
  /** What it is at, in words of its handler. */
  phase: string
  /** How far, in the handler's own measure; `total` 0 is not known yet. */
  done: number
  total: number
  /** Where whoever takes it up again goes on. */
  position: JsonObject
  cancelAsked: boolean
  /** What came of it, in the handler's own shape; for a failure `{ words }`. */
  outcome: JsonObject | null
}
