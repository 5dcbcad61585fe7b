import { once } from 'node:events'
import { getHeapStatistics } from 'node:v8'
import { Worker } from 'node:worker_threads'
import type { Learned } from '../../core/pricing/outlook/outlook.ts'
import type { LearnAnswer, LearnJob, LearnLot } from './learn-worker.ts'

const SCRIPT = new URL('learn-worker.ts', import.meta.url)
/** What is made and thrown away in a moment fills this much before it is cleared: by itself the thread would take five times as much, for no less work. */
const SHORT_LIVED_MB = 16
/** A bound makes the thread clear sooner than it would with the room of the whole machine; a smaller machine's own stays. A record that wants more is not learnt from, and the log says so. */
const LONG_LIVED_MB = Math.min(768, Math.floor(getHeapStatistics().heap_size_limit / 2 ** 20))

/**
 * Learns in a thread of its own from what is read lot by lot, so that neither this thread nor the other ever holds all sightings: what stays of them is
 * what they taught. `script` is what the thread runs.
 *
 * Errors: that of a read; that of the thread, whenever it fails or ends, also while a lot is being read.
 */
export async function learnInThread(job: LearnJob, reads: ReadonlyArray<() => Promise<LearnLot>>, script: URL = SCRIPT): Promise<Learned> {
  const worker = new Worker(script, { resourceLimits: { maxYoungGenerationSizeMb: SHORT_LIVED_MB, maxOldGenerationSizeMb: LONG_LIVED_MB } })
  const unlessEnded = watchOver(worker)
  const tell = async (lot: LearnLot): Promise<Learned | null> => {
    const answered = once(worker, 'message') as Promise<[LearnAnswer]>
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread of this process has no origin
    worker.postMessage(lot)
    const [answer] = await unlessEnded(answered)
    if (!answer.ok) throw new Error(`the record could not be learnt from: ${answer.reason}`)
    return answer.learned
  }
  try {
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread of this process has no origin
    worker.postMessage(job)
    for (const read of reads) await tell(await unlessEnded(read()))
    return (await tell(null)) as Learned
  } finally {
    await worker.terminate()
  }
}

/**
 * Waits for some work, and is refused once the thread fails or ends, also where it did so while nobody waited. One wait at a time. A race against a promise that lives as long as the
 * thread would keep what every wait brought until the end: all sightings there are.
 */
function watchOver(worker: Worker): <Value>(work: Promise<Value>) => Promise<Value> {
  let ended: Error | undefined
  let refuse: (error: Error) => void = () => undefined
  const end = (error: Error): void => {
    ended ??= error
    refuse(ended)
  }
  worker.on('error', (error) => end(error instanceof Error ? error : new Error(String(error))))
  worker.on('exit', (code) => end(new Error(`the thread that learns ended by itself (code ${code})`)))
  return (work) =>
    new Promise((resolve, reject) => {
      work.then(resolve, reject)
      refuse = reject
      if (ended !== undefined) reject(ended)
    })
}
