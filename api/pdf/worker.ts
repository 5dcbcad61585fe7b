import { parentPort } from 'node:worker_threads'
import { createPaperCompiler } from './compile-paper.ts'
import type { QuotePdfInput } from './quote-paper.ts'

/** What the thread is asked and what it answers; `ready` once fonts are read and the compiler stands. */
export interface PdfRequest {
  id: number
  input: QuotePdfInput
}
export type PdfAnswer =
  { kind: 'ready' } | { kind: 'made'; id: number; pdf: Uint8Array<ArrayBuffer> } | { kind: 'failed'; id: number; reason: string }

const port = parentPort
if (port === null) throw new Error('worker.ts runs as a worker thread only')
const send = (answer: PdfAnswer, transfer: ArrayBuffer[] = []): void => port.postMessage(answer, transfer)

const { compile, tidy } = createPaperCompiler()
send({ kind: 'ready' })

port.on('message', ({ id, input }: PdfRequest) => {
  try {
    const pdf = new Uint8Array(compile(input))
    send({ kind: 'made', id, pdf }, [pdf.buffer])
  } catch (error) {
    send({ kind: 'failed', id, reason: reasonOf(error) })
  }
  tidy()
})

/** The compiler throws errors whose message is empty and whose words are in `code`. */
function reasonOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error)
  return error.message !== '' ? error.message : 'code' in error ? String(error.code) : error.name
}
