import { createHash } from 'node:crypto'
import { keptDocuments } from './kept-documents.ts'
import type { QuotePdfInput } from './quote-paper.ts'

/** A shop that prints for everybody at its counter stays under it; at a quarter of a second each the last waits ten, which a browser does. */
const MOST_WAITING = 40
/** Sixty quotes of the usual size, and little beside what the service takes anyway. */
const KEPT_BYTES = 16_000_000

/** Both sheets of a quote, asked for one right after the other: the second waits its turn. More at once is no reader's doing. */
const MOST_OF_A_LINK = 2

/** More documents are asked for than the machine should take on. */
export class PdfBusyError extends Error {}
/** Whoever asked has gone; there is nobody to answer. */
export class PdfUnwantedError extends Error {}

/**
 * Who asks. `by` names whoever it is, so that one who asks for many waits behind others who ask for one. `alone`: that one has two
 * documents in line at most, as a link has, since nobody knows who holds it. `signal` says that its reader has gone.
 */
export interface Asking {
  by?: string | undefined
  alone?: boolean | undefined
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
 * Puts a bounded queue before the maker of documents, which makes one at a time. Next is who has had fewest made since the queue was last
 * empty, the longest waiting first. Whoever asks for one that is being made, or was a moment ago, gets that one. An order whose readers have
 * all gone is not begun.
 *
 * Errors: PdfBusyError where forty wait already or the link has two others in line; PdfUnwantedError for a reader who has gone; the
 * maker's own.
 *
 * @example createPdfDesk(renderQuotePdf)(input, { by: quoteId, alone: true, signal })
 */
export function createPdfDesk(make: (input: QuotePdfInput) => Promise<Uint8Array>): PdfDesk {
  const kept = keptDocuments(KEPT_BYTES)
  const waiting: Order[] = []
  const made = new Map<string, number>()
  let current: Order | undefined

  const startNext = (): void => {
    if (current !== undefined) return
    current = takeNext(waiting, made)
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
  const orderOf = (key: string, input: QuotePdfInput, { by, alone = false }: Asking): Order => {
    const open = current === undefined ? waiting : [current, ...waiting]
    const same = open.find((order) => order.key === key)
    if (same !== undefined) return same
    if (waiting.length >= MOST_WAITING || (alone && open.filter((order) => order.by === by).length >= MOST_OF_A_LINK))
      throw new PdfBusyError('too many documents at once')
    const order = placeOrder(key, input, by)
    waiting.push(order)
    startNext()
    return order
  }

  return async (input, asking = {}) => {
    const { signal } = asking
    if (signal?.aborted === true) throw new PdfUnwantedError('nobody waits for it')
    const key = createHash('sha256').update(JSON.stringify(input)).digest('base64')
    const known = kept.get(key)
    if (known !== undefined) return known
    const order = orderOf(key, input, asking)
    order.readers += 1
    const gone = (): void => leave(waiting, order)
    signal?.addEventListener('abort', gone, { once: true })
    return order.outcome.finally(() => signal?.removeEventListener('abort', gone))
  }
}

/** A reader has gone; an order that nobody waits for any more is not begun. */
function leave(waiting: Order[], order: Order): void {
  order.readers -= 1
  const place = waiting.indexOf(order)
  if (order.readers > 0 || place < 0) return
  waiting.splice(place, 1)
  order.settle.reject(new PdfUnwantedError('nobody waits for it'))
}

/** Takes the order whose turn it is out of the queue. `made` counts by who asked, and begins anew with an empty queue. */
function takeNext(waiting: Order[], made: Map<string, number>): Order | undefined {
  if (waiting.length === 0) made.clear()
  const turnOf = ({ by = '' }: Order): number => made.get(by) ?? 0
  const least = Math.min(...waiting.map(turnOf))
  const place = waiting.findIndex((order) => turnOf(order) === least)
  const [next] = place < 0 ? [] : waiting.splice(place, 1)
  if (next !== undefined) made.set(next.by ?? '', turnOf(next) + 1)
  return next
}

function placeOrder(key: string, input: QuotePdfInput, by: string | undefined): Order {
  const { promise, resolve, reject } = Promise.withResolvers<Uint8Array>()
  return { key, input, by, readers: 0, outcome: promise, settle: { resolve, reject } }
}
