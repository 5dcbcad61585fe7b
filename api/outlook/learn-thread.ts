import { once } from 'node:events'
import { Worker } from 'node:worker_threads'
import type { Learned } from '../../core/pricing/outlook/outlook.ts'
import type { LearnAnswer, LearnJob, LearnLot } from './learn-worker.ts'

const SCRIPT = new URL('learn-worker.ts', import.meta.url)

/**
 * Learns in a thread of its own from what is read lot by lot, so that neither this thread nor the other ever holds all sightings: what stays of them is
 * their report days. `script` is what the thread runs.
 *
 * Errors: that of a read; that of the thread, whenever it fails or ends, also while a lot is being read.
 */
export async function learnInThread(job: LearnJob, reads: ReadonlyArray<() => Promise<LearnLot>>, script: URL = SCRIPT): Promise<Learned> {
  const worker = new Worker(script)
  const ended = endOf(worker)
  const tell = async (lot: LearnLot): Promise<Learned | null> => {
    const answered = once(worker, 'message')
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread of this process has no origin
    worker.postMessage(lot)
    const [answer] = (await Promise.race([answered, ended])) as [LearnAnswer]
    if (!answer.ok) throw new Error(`the record could not be learnt from: ${answer.reason}`)
    return answer.learned
  }
  try {
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread of this process has no origin
    worker.postMessage(job)
    for (const read of reads) await tell(await Promise.race([read(), ended]))
    return (await tell(null)) as Learned
  } finally {
    await worker.terminate()
  }
}

/** Is refused once the thread fails or ends. Between two waits nobody looks at it: that it is refused then is no fault of the process. */
function endOf(worker: Worker): Promise<never> {
  const ended = new Promise<never>((_, reject) => {
    worker.on('error', (error) => reject(error instanceof Error ? error : new Error(String(error))))
    worker.on('exit', (code) => reject(new Error(`the thread that learns ended by itself (code ${code})`)))
  })
  ended.catch(() => undefined)
  return ended
}
