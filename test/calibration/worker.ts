import { closeSync, openSync, writeFileSync } from 'node:fs'
import { parentPort, workerData } from 'node:worker_threads'
import { ourForecaster } from './forecasters/ours.ts'
import { drawMarket } from './market/market.ts'
import { measureMarket } from './measure.ts'

/** One of the threads of a run: takes the next market that nobody took, of this process or another, and keeps what it measured in a file. */
const { seed, folder, markets, until } = workerData as { seed: string; folder: string; markets: number; until: number }

/** Made only where it is not there yet: who makes it has the market. */
function take(index: number): boolean {
  try {
    closeSync(openSync(`${folder}/${index}.taken`, 'wx'))
    return true
  } catch {
    return false
  }
}

for (let index = 0; index < markets && Date.now() < until; index += 1) {
  if (!take(index)) continue
  const market = drawMarket(seed, index)
  writeFileSync(`${folder}/${index}.json`, JSON.stringify(measureMarket(market, ourForecaster(market), seed)))
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- the port of a thread: no window, no origin
  parentPort?.postMessage(index)
}
