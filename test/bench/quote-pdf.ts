import { once } from 'node:events'
import { monitorEventLoopDelay } from 'node:perf_hooks'
import { Worker } from 'node:worker_threads'
import { closePdfWorker, renderQuotePdf, type QuotePdfInput } from '../../api/pdf/render-quote-pdf.ts'
import { revisionDocument } from '../../core/quote/revision-document.ts'
import { sampleInputs } from '../support/sample-revision.ts'
import { median, type Measurement } from './measurement.ts'

const LINES = 36
const ROUNDS = 15
const WARM_UP = 3
const NS_PER_MS = 1e6

/**
 * Three builds with 36 bought lines between them, sized by the real engine. Each round has its own number, names and prices: the compiler
 * remembers what it has laid out, and no two quotes of a counter are alike.
 */
function benchInput(round: number): QuotePdfInput {
  const inputs = sampleInputs({ builds: 3 })
  const bought = () => inputs.draft.builds.flatMap((build) => build.lines.filter((line) => line.answer === 'buy')).length
  while (bought() < LINES) {
    const id = `more-${bought()}`
    inputs.draft.builds[1]?.lines.push({ id, answer: 'buy', productId: 'thermometer', quantity: 1, storeId: null, note: '' })
  }
  inputs.products.forEach((product) => Object.assign(product, { name: `${product.name} ${round}` }))
  inputs.draft.builds.forEach((build) => Object.assign(build, { name: `${build.name} ${round}`, why: `${build.why} ${round}.` }))
  inputs.prices.forEach(({ today }) => today && Object.assign(today, { priceMinor: today.priceMinor + round }))
  inputs.draft.need.exact.coldestRoomC = 18 - round / 50
  const heading = {
    number: `2026-${String(round).padStart(4, '0')}`,
    revision: 1,
    issuedOn: '2026-10-20',
    standsUntil: '2026-10-31',
    advisor: 'Bram Ockley',
  }
  const links = { quote: 'https://tarnwick.example/q/abc', setup: 'https://tarnwick.example/s/abc', thisComputerOnly: false }
  return { document: revisionDocument(inputs, heading), customerName: 'Ines Tillish', paper: 'a4', links, draft: false }
}

interface Timed {
  ms: number
  /** Longest time between two turns of the main loop while waiting. */
  heldMs: number
}

/** Times the work and how late the main loop's timer of one millisecond was at most, without spinning: the compiler wants both cores. */
async function timed(work: () => Promise<unknown>): Promise<Timed> {
  const delay = monitorEventLoopDelay({ resolution: 1 })
  delay.enable()
  const started = performance.now()
  await work()
  const ms = performance.now() - started
  delay.disable()
  return { ms, heldMs: delay.max / NS_PER_MS }
}

/**
 * A quote of 36 lines as a PDF, warm, against the same input sent to a bare thread and back; and how long the main loop is held meanwhile.
 * The targets are 150 ms and 20 ms.
 */
export default async function quotePdfBench(): Promise<Measurement[]> {
  let input = benchInput(0)
  const bare = new Worker(
    'const { parentPort } = require("node:worker_threads"); parentPort.on("message", (m) => parentPort.postMessage(m))',
    { eval: true },
  )
  const echo = async (): Promise<void> => {
    const answered = once(bare, 'message')
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread of this process has no origin
    bare.postMessage(input)
    await answered
  }
  for (let round = 0; round < WARM_UP; round += 1) {
    input = benchInput(round)
    await renderQuotePdf(input)
    await echo()
  }
  const values: Timed[] = []
  const baselines: Timed[] = []
  for (let round = 0; round < ROUNDS; round += 1) {
    input = benchInput(WARM_UP + round)
    values.push(await timed(() => renderQuotePdf(input)))
    baselines.push(await timed(echo))
  }
  await bare.terminate()
  await closePdfWorker()
  const row = (name: string, pick: keyof Timed): Measurement => {
    const value = median(values.map((each) => each[pick]))
    const baseline = median(baselines.map((each) => each[pick]))
    return { name, value, unit: 'ms', baseline, ratio: value / baseline }
  }
  return [row('quote.pdf', 'ms'), row('quote.pdf.loop-held', 'heldMs')]
}
