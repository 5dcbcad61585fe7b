import type { Sql } from 'postgres'

/** One connection of postgres.js (`max: 1`), with the parsers that connect.ts sets. */
export type Client = Sql<{ bigint: number; civilDate: string }>
type Answer = Awaited<ReturnType<Client['unsafe']>>

/** A connection from its first query to its end. Once lost it is never used again, so that nothing meant for it lands on another. */
export interface Lane {
  readonly client: Client
  readonly bornAtMs: number
  /** When it last answered, or was given work after it had answered everything. */
  movedAtMs: number
  inFlight: number
  /** Those in flight that may take long: nothing short is put behind them. */
  long: number
  held: boolean
  /** Its transaction has no limit: silence is work. */
  patient: boolean
  lost: boolean
}

/** One process with short queries: more connections than this only queue inside the server. */
const LANES = 10
/** Transactions at once. Two lanes always stay for single queries: a transaction that waits for one of those would wait for ever. */
const HELD_LANES = 8
/** Above the server's own limit for a statement: by then it would have refused, so that only a frozen server or network is still silent. */
const ANSWER_MS = 17_000
/** Prepared statements pile up in a connection; half an hour of them is a few megabytes in the server. */
const LIFE_MS = 30 * 60_000
/** A firewall forgets a silent connection after some minutes: this one is closed before it can be one of those. */
const IDLE_MS = 5 * 60_000
const WATCH_MS = 1_000
/** Queries under way on one lane before a short one opens the next: sent together they cost one write and one waking of the server. */
const PACKED = 4
/** What has ever been answered this fast may wait in line with its like, or they behind it. */
const SHORT_MS = 1
/** A write may wait for a lock, and whoever holds that lock for a read that would stand behind it: no write is ever put in line. */
const WRITES = /\b(?:insert|update|delete)\b/i
/** A lane silent for longer than this while work is under way is busy with something long: no short query waits behind it. */
const MOVING_MS = 5
/** Texts of queries remembered with their fastest answer: a few hundred are in use, and lists of other lengths make new ones. */
const MOST_TEXTS = 1_000
/** The machine slept or the loop was held: answers may be waiting unread, so that silence proves nothing yet. */
const HELD_UP_MS = 3 * WATCH_MS

const lostError = (code: 'CONNECTION_CLOSED' | 'CONNECTION_ENDED', message: string): Error => Object.assign(new Error(message), { code })

/** Said in a transaction that may take as long as it needs: the server sets it no limit, and it is waited for here as well. */
export const WITHOUT_LIMIT = 'set local statement_timeout = 0'

interface Turn {
  resolve(): void
  reject(error: Error): void
}

/**
 * Connections to one server, each a client of its own that is thrown away when it closes.
 *
 * In the driver's own pool a reserved connection that closes is still written to (which ends the process), may by then belong to someone
 * else, and keeps unsent bytes that spoil the next attempt.
 */
export class Lanes {
  readonly #open: (onClose: () => void) => Client
  #lanes: Lane[] = []
  #held = 0
  #waiting: Turn[] = []
  #ended = false
  #watch: NodeJS.Timeout | undefined
  #watchedAtMs = 0
  readonly #fastestMs = new Map<string, number>()

  constructor(open: (onClose: () => void) => Client) {
    this.#open = open
  }

  /** One query outside a transaction: on a lane of its own, or where it is known to be short, in line with others that are. */
  async run(text: string, parameters: readonly unknown[]): Promise<Answer> {
    const startedMs = performance.now()
    const fastestMs = this.#fastestMs.get(text) ?? Infinity
    const isShort = fastestMs < SHORT_MS
    const lane = (isShort ? this.#moving(startedMs) : undefined) ?? this.#leastBusy()
    if (!isShort) lane.long += 1
    try {
      const answer = await this.runOn(lane, text, parameters)
      const tookMs = performance.now() - startedMs
      if (tookMs < fastestMs) this.#remember(text, tookMs)
      return answer
    } finally {
      if (!isShort) lane.long -= 1
    }
  }

  /** Errors: CONNECTION_CLOSED where the lane was lost, the driver's and the server's own. */
  async runOn(lane: Lane, text: string, parameters: readonly unknown[]): Promise<Answer> {
    if (lane.lost) throw lostError('CONNECTION_CLOSED', 'The connection to the database was lost.')
    if (lane.inFlight === 0) lane.movedAtMs = performance.now()
    lane.inFlight += 1
    if (text === WITHOUT_LIMIT) lane.patient = true
    try {
      return await lane.client.unsafe(text, [...parameters] as never[], { prepare: true })
    } finally {
      lane.inFlight -= 1
      lane.movedAtMs = performance.now()
    }
  }

  /** A lane for one transaction; waits for its turn. What is in flight on it is answered before. */
  async hold(): Promise<Lane> {
    if (this.#held < HELD_LANES) this.#held += 1
    else await new Promise<void>((resolve, reject) => this.#waiting.push({ resolve, reject }))
    const lane = this.#leastBusy()
    lane.held = true
    return lane
  }

  giveBack(lane: Lane): void {
    lane.held = false
    lane.patient = false
    const next = this.#waiting.shift()
    if (next) next.resolve()
    else this.#held -= 1
  }

  /** Never to be used again; what is in flight on it fails. */
  lose(lane: Lane): void {
    this.#drop(lane, 0)
  }

  async end(): Promise<void> {
    this.#ended = true
    clearInterval(this.#watch)
    this.#refuseWaiting(lostError('CONNECTION_ENDED', 'The connections to the database were closed.'))
    await Promise.all(this.#lanes.map((lane) => lane.client.end({ timeout: 5 })))
  }

  #remember(text: string, tookMs: number): void {
    if (WRITES.test(text)) return
    if (this.#fastestMs.size >= MOST_TEXTS && !this.#fastestMs.has(text)) this.#fastestMs.clear()
    this.#fastestMs.set(text, tookMs)
  }

  /** The fullest lane that still takes one more and is answering; undefined where none is. */
  #moving(now: number): Lane | undefined {
    let best: Lane | undefined
    for (const lane of this.#lanes) {
      const takes = !lane.held && lane.long === 0 && lane.inFlight < PACKED && (lane.inFlight === 0 || now - lane.movedAtMs < MOVING_MS)
      if (takes && (best === undefined || lane.inFlight > best.inFlight)) best = lane
    }
    return best
  }

  #leastBusy(): Lane {
    if (this.#ended) throw lostError('CONNECTION_ENDED', 'The connections to the database were closed.')
    let best: Lane | undefined
    for (const lane of this.#lanes) if (!lane.held && (best === undefined || lane.inFlight < best.inFlight)) best = lane
    return best === undefined || (best.inFlight > 0 && this.#lanes.length < LANES) ? this.#newLane() : best
  }

  #newLane(): Lane {
    const now = performance.now()
    const lane: Lane = {
      client: this.#open(() => this.lose(lane)),
      bornAtMs: now,
      movedAtMs: now,
      inFlight: 0,
      long: 0,
      held: false,
      patient: false,
      lost: false,
    }
    this.#lanes.push(lane)
    this.#watch ??= this.#startWatch()
    return lane
  }

  #drop(lane: Lane, timeoutS: number): void {
    if (lane.lost) return
    lane.lost = true
    this.#lanes = this.#lanes.filter((other) => other !== lane)
    lane.client.end({ timeout: timeoutS }).catch(() => undefined)
  }

  #startWatch(): NodeJS.Timeout {
    this.#watchedAtMs = performance.now()
    return setInterval(() => this.#look(performance.now()), WATCH_MS).unref()
  }

  #look(now: number): void {
    const heldUp = now - this.#watchedAtMs > HELD_UP_MS
    this.#watchedAtMs = now
    for (const lane of this.#lanes) {
      if (heldUp) lane.movedAtMs = now
      const stillMs = now - lane.movedAtMs
      if (lane.inFlight > 0 && stillMs > ANSWER_MS && !lane.patient) {
        this.lose(lane)
        this.#refuseWaiting(lostError('CONNECTION_CLOSED', 'The database has not answered for too long.'))
      } else if (lane.inFlight === 0 && !lane.held && (stillMs > IDLE_MS || now - lane.bornAtMs > LIFE_MS)) this.#drop(lane, 5)
    }
  }

  #refuseWaiting(error: Error): void {
    for (const turn of this.#waiting.splice(0)) turn.reject(error)
  }
}
