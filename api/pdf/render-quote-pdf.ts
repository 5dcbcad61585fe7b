import { Worker } from 'node:worker_threads'
import type { QuotePdfInput } from './quote-paper.ts'
import type { PdfAnswer, PdfRequest } from './worker.ts'

export type { QuotePdfInput, QuotePdfLinks } from './quote-paper.ts'

/** A long quote takes a tenth of a second; a document that takes this long hangs, and its thread is ended. Cold start included. */
const LONGEST_MS = 15_000

interface Job {
  id: number
  input: QuotePdfInput
  resolve: (pdf: Uint8Array) => void
  reject: (error: Error) => void
  timeoutMs: number
  timer: NodeJS.Timeout | null
}

const queue: Job[] = []
let running: Job | null = null
let worker: Worker | null = null
let lastId = 0

/**
 * A quote as a tagged PDF (PDF/UA-1), made in a thread of its own so that nothing else waits for it.
 *
 * The same input gives the same bytes: its date is the document's, not the clock's. One document is made at a time, in the order asked.
 * Errors: rejects where the template refuses, or after 15 s (the thread is ended and the next document starts a new one).
 *
 * @example await renderQuotePdf({ document, customerName: 'Ines Tillish', paper: 'a4', links: null, draft: false })
 */
export function renderQuotePdf(input: QuotePdfInput, options: { timeoutMs?: number } = {}): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    lastId += 1
    const job: Job = { id: lastId, input, resolve, reject, timeoutMs: options.timeoutMs ?? LONGEST_MS, timer: null }
    queue.push(job)
    startNext()
  })
}

/** Ends the thread; the next document starts a new one. Documents still waiting are refused. */
export async function closePdfWorker(): Promise<void> {
  const ended = worker
  worker = null
  for (const job of [running, ...queue.splice(0)]) if (job) settle(job, new Error('The PDF thread was closed'))
  running = null
  await ended?.terminate()
}

function startNext(): void {
  if (running !== null) return
  const job = queue.shift()
  if (job === undefined) return
  running = job
  worker ??= startWorker()
  worker.ref()
  job.timer = setTimeout(() => failRunning(new Error(`The PDF took longer than ${job.timeoutMs} ms`)), job.timeoutMs)
  const request: PdfRequest = { id: job.id, input: job.input }
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a thread of this process has no origin
  worker.postMessage(request)
}

function startWorker(): Worker {
  const started = new Worker(new URL('./worker.ts', import.meta.url))
  started.on('message', (answer: PdfAnswer) => {
    if (answer.kind === 'ready' || running?.id !== answer.id) return
    const job = running
    running = null
    settle(job, answer.kind === 'made' ? answer.pdf : new Error(`The PDF could not be made: ${answer.reason}`))
    // A thread without work keeps no process alive.
    started.unref()
    startNext()
  })
  started.on('error', (error) => {
    if (worker === started) failRunning(error instanceof Error ? error : new Error(String(error)))
  })
  started.on('exit', () => {
    if (worker === started) failRunning(new Error('The PDF thread ended'))
  })
  return started
}

/** The document being made is given up with its thread: a hung compiler cannot be asked to stop. */
function failRunning(error: Error): void {
  const ended = worker
  const job = running
  worker = null
  running = null
  if (job) settle(job, error)
  void ended?.terminate()
  startNext()
}

function settle(job: Job, outcome: Uint8Array | Error): void {
  if (job.timer) clearTimeout(job.timer)
  if (outcome instanceof Error) job.reject(outcome)
  else job.resolve(outcome)
}
