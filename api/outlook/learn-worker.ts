import { parentPort } from 'node:worker_threads'
import { learn, type Learned, type MarketRecord } from '../../core/pricing/outlook/outlook.ts'

/** A record, and what others said of its reporters. */
export interface LearnJob {
  record: MarketRecord
  trust: Learned['trust']
}
/** What the thread answers to a record. */
export type LearnAnswer = { ok: true; learned: Learned } | { ok: false; reason: string }

const port = parentPort
if (port === null) throw new Error('learn-worker.ts runs as a worker thread only')

port.once('message', ({ record, trust }: LearnJob) => {
  try {
    port.postMessage({ ok: true, learned: learn(record, trust) } satisfies LearnAnswer)
  } catch (error) {
    port.postMessage({ ok: false, reason: error instanceof Error ? (error.stack ?? error.message) : 'unknown' } satisfies LearnAnswer)
  }
})
