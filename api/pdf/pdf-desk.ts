import { createHash } from 'node:crypto'
import { keptDocuments } from './kept-documents.ts'
import type { QuotePdfInput } from './quote-paper.ts'

/** Three seconds of work, a quarter of a second each: whoever comes after is told to come again, before everybody waits for half a minute. */
const MOST_WAITING = 12
/** Sixty quotes of the usual size, and little beside what the service takes anyway. */
const KEPT_BYTES = 16_000_000

/** More documents are asked for than the machine should take on. */
export class PdfBusyError extends Error {}
/** Whoever asked has gone; there is nobody to answer. */
export class PdfUnwantedError extends Error {}

/** Who asks. `by` names one link: it has one document made at a time. `signal` says that its reader has gone. */
export interface Asking {
  by?: string | undefined
  signal?: AbortSignal | undefined
}
export type PdfDesk = (input: QuotePdfInput, asking?: Asking) => Promise<Uint8Array>

interface Order {
  key: string
  input: QuotePdfInput
  by: string | undefined
  readers: number
  outcome: Promise<Uint8Array>
  settle: { resolve: (pdf: Uint8Array) => void; reject: (error: Error) => void }
}

/**
 * Puts a bounded queue before the maker of documents, which makes one at a time. Whoever asks for one that is being made, or was a moment ago,
 * gets that one. An order whose readers have all gone is not begun.
 *
 * Errors: PdfBusyError where twelve wait already or the link has another one in the making; PdfUnwantedError for a reader who has gone; the
 * maker's own.
 *
 * @example createPdfDesk(renderQuotePdf)(input, { by: quoteId, signal })
 */
export function createPdfDesk(make: (input: QuotePdfInput) => Promise<Uint8Array>): PdfDesk {
  const kept = keptDocuments(KEPT_BYTES)
  const waiting: Order[] = []
  let current: Order | undefined

  const startNext = (): void => {
    if (current !== undefined) return
    current = waiting.shift()
    if (current !== undefined) void work(current)
  }
  const work = async (order: Order): Promise<void> => {
    try {
      const pdf = await make(order.input)
      kept.put(order.key, pdf)
      order.settle.resolve(pdf)
    } catch (error) {
      order.settle.reject(error instanceof Error ? error : new Error(String(error)))
    }
    current = undefined
    startNext()
  }
  const leave = (order: Order): void => {
    order.readers -= 1
    const place = waiting.indexOf(order)
    if (order.readers > 0 || place < 0) return
    waiting.splice(place, 1)
    order.settle.reject(new PdfUnwantedError('nobody waits for it'))
  }
  const orderOf = (key: string, input: QuotePdfInput, by: string | undefined): Order => {
    const open = current === undefined ? waiting : [current, ...waiting]
    const same = open.find((order) => order.key === key)
    if (same !== undefined) return same
    if (waiting.length >= MOST_WAITING || (by !== undefined && open.some((order) => order.by === by)))
      throw new PdfBusyError('too many documents at once')
    const order = placeOrder(key, input, by)
    waiting.push(order)
    startNext()
    return order
  }

  return async (input, { by, signal } = {}) => {
    if (signal?.aborted === true) throw new PdfUnwantedError('nobody waits for it')
    const key = createHash('sha256').update(JSON.stringify(input)).digest('base64')
    const known = kept.get(key)
    if (known !== undefined) return known
    const order = orderOf(key, input, by)
    order.readers += 1
    const gone = (): void => leave(order)
    signal?.addEventListener('abort', gone, { once: true })
    return order.outcome.finally(() => signal?.removeEventListener('abort', gone))
  }
}

function placeOrder(key: string, input: QuotePdfInput, by: string | undefined): Order {
  const { promise, resolve, reject } = Promise.withResolvers<Uint8Array>()
  return { key, input, by, readers: 0, outcome: promise, settle: { resolve, reject } }
}
