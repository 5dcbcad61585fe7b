import { Worker } from 'node:worker_threads'
import type { OutlookDone, OutlookJob, PlainOutlook } from './outlook-worker.ts'

/** As many wait at most; a build takes a tenth of a second, and who comes later is told to come again. */
const MOST_WAITING = 60
/** Of one person: the builds of a quote twice over. */
const MOST_OF_ONE = 8

/** Too many wait already. Whoever asked may ask again. */
export class OutlookBusy extends Error {}

interface Waiting {
  by: string
  resolve: (outlook: PlainOutlook) => void
  reject: (error: Error) => void
}
let thread: Worker | null = null
let count = 0
const waiting = new Map<number, Waiting>()

/** Reckons in a thread of this process, one purchase after the other, so that no request waits for another's. Errors: OutlookBusy. */
export function reckonOutlook(job: Omit<OutlookJob, 'id'>, by: string): Promise<PlainOutlook> {
  const ofOne = [...waiting.values()].filter((asked) => asked.by === by).length
  if (waiting.size >= MOST_WAITING || ofOne >= MOST_OF_ONE) return Promise.reject(new OutlookBusy('too many wait'))
  const id = ++count
  const worker = (thread ??= startThread())
  return new Promise((resolve, reject) => {
    waiting.set(id, { by, resolve, reject })
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread of this process has no origin
    worker.postMessage({ id, ...job })
  })
}

function startThread(): Worker {
  const worker = new Worker(new URL('outlook-worker.ts', import.meta.url))
  worker.unref()
  worker.on('message', (done: OutlookDone) => {
    const asked = waiting.get(done.id)
    waiting.delete(done.id)
    if ('outlook' in done) asked?.resolve(done.outlook)
    else asked?.reject(new Error(`the outlook could not be reckoned: ${done.reason}`))
  })
  worker.on('error', (error) => giveUp(worker, error instanceof Error ? error : new Error(String(error))))
  worker.on('exit', () => giveUp(worker, new Error('the thread of the outlook ended')))
  return worker
}

/** A thread that ended takes its purchases with it; the next one gets a thread of its own. */
function giveUp(worker: Worker, error: Error): void {
  if (thread !== worker) return
  thread = null
  const left = [...waiting.values()]
  waiting.clear()
  for (const { reject } of left) reject(error)
}
