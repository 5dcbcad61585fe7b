import { Worker } from 'node:worker_threads'
import type { OutlookDone, OutlookJob, PlainOutlook } from './outlook-worker.ts'

/** As many wait at most; a build takes a tenth of a second, and who comes later is told to come again. */
const MOST_WAITING = 60
/** Of one person: the builds of a quote twice over. */
const MOST_OF_ONE = 8

/** Too many wait already. Whoever asked may ask again. */
export class OutlookBusy extends Error {}

interface Waiting {
  id: number
  by: string
  job: Omit<OutlookJob, 'id'>
  resolve: (outlook: PlainOutlook) => void
  reject: (error: Error) => void
}
let thread: Worker | null = null
let count = 0
/** Those who ask take turns: whoever was served last stands at the end. */
const turns = new Map<string, Waiting[]>()
let current: Waiting | null = null
let last = ''
/** How many purchases of each are under way, what is read for them included. */
const underWay = new Map<string, number>()

/**
 * Does the work of a purchase, reading for it included, while not too many are under way: who asks too much is told before anything is read.
 * Errors: OutlookBusy; those of the work.
 */
export async function withRoom<Value>(by: string, work: () => Promise<Value>): Promise<Value> {
  const ofOne = underWay.get(by) ?? 0
  const all = [...underWay.values()].reduce((sum, one) => sum + one, 0)
  if (all >= MOST_WAITING || ofOne >= MOST_OF_ONE) throw new OutlookBusy('too many wait')
  underWay.set(by, ofOne + 1)
  try {
    return await work()
  } finally {
    const left = (underWay.get(by) ?? 1) - 1
    if (left > 0) underWay.set(by, left)
    else underWay.delete(by)
  }
}

/** Reckons in a thread of this process, one purchase after the other and people in turn, so that no request waits for another's. */
export function reckonOutlook(job: Omit<OutlookJob, 'id'>, by: string): Promise<PlainOutlook> {
  return new Promise((resolve, reject) => {
    turns.set(by, [...(turns.get(by) ?? []), { id: ++count, by, job, resolve, reject }])
    reckonNext()
  })
}

function reckonNext(): void {
  const [by, [next, ...later] = []] = [...turns].find(([each]) => each !== last) ?? [...turns][0] ?? []
  if (current !== null || by === undefined || next === undefined) return
  turns.delete(by)
  if (later.length > 0) turns.set(by, later)
  current = next
  last = by
  thread ??= startThread()
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread of this process has no origin
  thread.postMessage({ id: next.id, ...next.job })
}

function startThread(): Worker {
  const worker = new Worker(new URL('outlook-worker.ts', import.meta.url))
  worker.unref()
  worker.on('message', (done: OutlookDone) => {
    const asked = current?.id === done.id ? current : null
    current = null
    if ('outlook' in done) asked?.resolve(done.outlook)
    else asked?.reject(new Error(`the outlook could not be reckoned: ${done.reason}`))
    reckonNext()
  })
  worker.on('error', (error) => giveUp(worker, error instanceof Error ? error : new Error(String(error))))
  worker.on('exit', () => giveUp(worker, new Error('the thread of the outlook ended')))
  return worker
}

/** A thread that ended takes its purchase with it; the next one gets a thread of its own. */
function giveUp(worker: Worker, error: Error): void {
  if (thread !== worker) return
  thread = null
  const lost = current
  current = null
  lost?.reject(error)
  reckonNext()
}
