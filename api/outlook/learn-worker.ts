import { parentPort } from 'node:worker_threads'
import { dayNumber } from '../../core/pricing/outlook/civil-day.ts'
import { learnFrom, type Learned, type MarketRecord } from '../../core/pricing/outlook/outlook.ts'
import { taughtBy, type ProductTaught } from '../../core/pricing/outlook/taught.ts'
import { pricesTold } from '../../core/pricing/outlook/told-prices.ts'
import { timelines } from '../../core/pricing/outlook/timeline.ts'
import { trustFrom } from '../../core/pricing/trust.ts'

/** What is known beside the sightings, told first. */
export interface LearnJob {
  record: Omit<MarketRecord, 'sightings'>
  trust: Learned['trust']
}
/** Then all sightings of some products after those of others, in the order of their ids, as a text (`pricesTold`), each lot once the one before is answered; at last null. */
export type LearnLot = { told: string } | null
/** What the thread answers to a lot, and to the last. */
export type LearnAnswer = { ok: true; learned: Learned | null } | { ok: false; reason: string }

const port = parentPort
if (port === null) throw new Error('learn-worker.ts runs as a worker thread only')

port.once('message', (job: LearnJob) => {
  const taught: ProductTaught[] = []
  port.on('message', (lot: LearnLot) => {
    try {
      if (lot !== null) taught.push(...taughtBy(timelines(pricesTold(lot.told), dayNumber(job.record.asOf), trustFrom(job.trust))))
      port.postMessage({ ok: true, learned: lot === null ? learnFrom(taught, job.record, job.trust) : null } satisfies LearnAnswer)
    } catch (error) {
      port.postMessage({ ok: false, reason: error instanceof Error ? (error.stack ?? error.message) : 'unknown' } satisfies LearnAnswer)
    }
  })
})
