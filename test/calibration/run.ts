import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { Worker } from 'node:worker_threads'
import { rowsByTrait, sayRows } from './by-trait.ts'
import { calibrationDocument } from './document.ts'
import type { MarketResult } from './measure.ts'
import { summarise } from './summary.ts'

/**
 * `npm run calibrate [-- --markets n] [--seed text] [--traits] [--minutes n] [--threads n] [--beside]`: holds the outlook against simulated markets whose parameters come from the hash of the commit,
 * so that nobody can have tuned to them. Prints what came out. A run on the commit's own seed writes docs/calibration.md; one with --seed is for looking
 * and writes nothing. --traits adds a table of what kind of market each miss belongs to. No market is begun after --minutes, an hour unless said otherwise; what was
 * measured till then is told. Each market's result is a file; a second process with --beside takes its share of a run that is under way, and the one that ends last tells all.
 */
const { values } = parseArgs({
  options: {
    markets: { type: 'string', default: '500' },
    seed: { type: 'string' },
    traits: { type: 'boolean', default: false },
    minutes: { type: 'string', default: '60' },
    beside: { type: 'boolean', default: false },
    threads: { type: 'string', default: '2' },
  },
})
const markets = Number(values.markets)
if (!Number.isInteger(markets) || markets < 1) {
  console.error(`--markets is "${values.markets}". Give a whole number of markets, 1 or more: --markets 500.`)
  process.exit(1)
}
const minutes = Number(values.minutes)
if (!(minutes > 0)) {
  console.error(`--minutes is "${values.minutes}". Give a number above 0: --minutes 20.`)
  process.exit(1)
}
const threads = Number(values.threads)
if (!Number.isInteger(threads) || threads < 1 || threads > 64) {
  console.error(`--threads is "${values.threads}". Give a whole number from 1 to 64: --threads 2.`)
  process.exit(1)
}
const commit = execFileSync('git', ['rev-parse', 'HEAD'], { encoding: 'utf8' }).trim()
const seed = values.seed ?? commit
const started = performance.now()
const folder = `.types/calibration/${createHash('sha256').update(seed).digest('hex').slice(0, 16)}`
if (!values.beside) rmSync(folder, { recursive: true, force: true })
mkdirSync(folder, { recursive: true })

function measureSome(): Promise<void> {
  return new Promise((done, failed) => {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), {
      workerData: { seed, folder, markets, until: Date.now() + minutes * 60_000 },
    })
    worker.on('message', (measured: number) => {
      if (measured % 25 === 24) console.error(`${measured + 1} of ${markets} markets begun (${seconds()} s)`)
    })
    worker.on('error', failed)
    worker.on('exit', (code) => (code === 0 ? done() : failed(new Error(`A thread ended with code ${code}`))))
  })
}
const seconds = (): string => ((performance.now() - started) / 1000).toFixed(0)

await Promise.all(Array.from({ length: threads }, measureSome))
const results = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => JSON.parse(readFileSync(`${folder}/${name}`, 'utf8')) as MarketResult)
results.sort((a, b) => a.index - b.index)
const summary = summarise(results)
const traits = rowsByTrait(results)
const text = await calibrationDocument(summary, traits, { commit, seed })
console.log(text)
if (values.traits) console.log(sayRows(traits))
if (values.seed === undefined) writeFileSync('docs/calibration.md', text)
