import { parentPort } from 'node:worker_threads'
import { outlookOf, type Learned, type MarketRecord, type Outlook } from '../../core/pricing/outlook/outlook.ts'

/** One purchase as a thread can be told of it: what a unit comes to with tax is a factor by store, line by line; absent is 1. */
export interface OutlookJob {
  id: number
  learned: Learned
  record: MarketRecord
  lines: ReadonlyArray<{ productId: string; quantity: number; storeIds: readonly string[]; factors: Readonly<Record<string, number>> }>
  until: string
  waitingCostPerDayMinor: number
  leastSavingMinor: number
  draws: number
  seed: number
}
/** Without what cannot travel: the prices to buy at of later days, and the single draws. */
export type PlainOutlook = {
  lines: Array<Omit<Outlook['lines'][number], 'priceToBuyAt'>>
  total: Omit<Outlook['total'], 'draws'>
}
export type OutlookDone = { id: number; outlook: PlainOutlook } | { id: number; reason: string }

const port = parentPort
if (port === null) throw new Error('outlook-worker.ts runs as a worker thread only')
const send = (done: OutlookDone): void => port.postMessage(done)

port.on('message', ({ id, learned, record, lines, ...ask }: OutlookJob) => {
  try {
    const asked = lines.map(({ factors, ...line }) => ({
      ...line,
      priceOf: (storeId: string, unitMinor: number) => unitMinor * (factors[storeId] ?? 1),
    }))
    const { lines: told, total } = outlookOf(learned, record, { ...ask, lines: asked })
    const plain = told.map(({ priceToBuyAt: _later, ...line }) => line)
    const { draws: _draws, ...sums } = total
    send({ id, outlook: { lines: plain, total: sums } })
  } catch (error) {
    send({ id, reason: error instanceof Error ? (error.stack ?? error.message) : 'unknown' })
  }
})
