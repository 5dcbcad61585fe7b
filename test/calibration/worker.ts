import { parentPort, workerData } from 'node:worker_threads'
import { ourForecaster } from './forecasters/ours.ts'
import { drawMarket } from './market/market.ts'
import { measureMarket } from './measure.ts'

/** One of the threads of a run: measures its markets one by one and hands each back. */
const { seed, from, step, markets, until } = workerData as { seed: string; from: number; step: number; markets: number; until: number }

for (let index = from; index < markets && Date.now() < until; index += step) {
  const market = drawMarket(seed, index)
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- the port of a thread: no window, no origin
  parentPort?.postMessage(measureMarket(market, ourForecaster(market), seed))
}
