import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { keptDocuments } from '../../../api/pdf/kept-documents.ts'
import { createPdfDesk, PdfBusyError, PdfUnwantedError, type PdfDesk } from '../../../api/pdf/pdf-desk.ts'
import { closePdfWorker, renderQuotePdf, type QuotePdfInput } from '../../../api/pdf/render-quote-pdf.ts'
import { sampleRevision } from '../../support/sample-revision.ts'

const document = sampleRevision({ builds: 1 })
const inputOf = (customerName: string): QuotePdfInput => ({ document, customerName, paper: 'a4', links: null, draft: false })

/** A maker that waits to be told how each document ends. */
let begun: Array<{ name: string; end: (outcome: Uint8Array | Error) => void }>
let desk: PdfDesk
beforeEach(() => {
  begun = []
  desk = createPdfDesk(
    ({ customerName }) =>
      new Promise((resolve, reject) => {
        const end = (outcome: Uint8Array | Error): void => (outcome instanceof Error ? reject(outcome) : resolve(outcome))
        begun.push({ name: customerName ?? '', end })
      }),
  )
})
afterAll(closePdfWorker)
const names = (): string[] => begun.map(({ name }) => name)
const settled = (): Promise<void> => new Promise((resolve) => setImmediate(resolve))
const bytes = (size = 3): Uint8Array => new Uint8Array(size).fill(7)

describe('documents asked for at once', () => {
  it('are made one at a time; forty wait, and the next is refused at once', async () => {
    const asked = Array.from({ length: 41 }, (_, index) => desk(inputOf(`reader ${index}`)))
    await expect(desk(inputOf('one too many'))).rejects.toBeInstanceOf(PdfBusyError)
    for (let made = 0; made < 41; made += 1) {
      expect(names()).toHaveLength(made + 1)
      begun[made]?.end(bytes(made))
      await settled()
    }
    expect((await Promise.all(asked)).map(({ length }) => length)).toEqual(Array.from({ length: 41 }, (_, index) => index))
    expect(names()).not.toContain('one too many')
  })

  it('are made once where they are the same, a hundred times over', async () => {
    const asked = Array.from({ length: 100 }, () => desk(inputOf('Ines'), { by: 'link', alone: true }))
    expect(names()).toEqual(['Ines'])
    begun[0]?.end(bytes())
    expect(new Set(await Promise.all(asked)).size).toBe(1)
    await desk(inputOf('Ines'))
    expect(names()).toEqual(['Ines'])
  })

  it('are made anew after a failure, and a failure holds up nobody', async () => {
    const [failed, next] = [desk(inputOf('Ines')), desk(inputOf('Noor'))]
    begun[0]?.end(new Error('no paper'))
    await expect(failed).rejects.toThrow('no paper')
    begun[1]?.end(bytes())
    expect(await next).toEqual(bytes())
    const again = desk(inputOf('Ines'))
    begun[2]?.end(bytes())
    expect(await again).toEqual(bytes())
  })

  it('come to everybody in turn: who prints sixteen waits behind who prints one', async () => {
    const asked = Array.from({ length: 16 }, (_, index) => desk(inputOf(`counter ${index}`), { by: 'counter' }))
    asked.push(desk(inputOf('Noor'), { by: 'Noor' }), desk(inputOf('a link'), { by: 'link', alone: true }))
    for (let made = 0; made < 18; made += 1) {
      begun[made]?.end(bytes())
      await settled()
    }
    await Promise.all(asked)
    expect(names().slice(0, 4)).toEqual(['counter 0', 'Noor', 'a link', 'counter 1'])
    expect(names()).toHaveLength(18)
  })

  it('are two for one link, of which the second waits its turn and a third is refused; others pass', async () => {
    const link = { by: 'link', alone: true }
    const [first, second] = [desk(inputOf('on A4'), link), desk(inputOf('on Letter'), link)]
    await expect(desk(inputOf('of the version before'), link)).rejects.toBeInstanceOf(PdfBusyError)
    const other = desk(inputOf('another'), { by: 'other link', alone: true })
    for (let made = 0; made < 3; made += 1) {
      begun[made]?.end(bytes())
      await settled()
    }
    await Promise.all([first, second, other])
    expect(names()).toEqual(['on A4', 'another', 'on Letter'])
    const third = desk(inputOf('of the version before'), link)
    begun[3]?.end(bytes())
    expect(await third).toEqual(bytes())
  })
})

describe('a reader who goes away', () => {
  it('leaves nothing to make, unless someone else waits for the same', async () => {
    const [gone, alsoGone] = [new AbortController(), new AbortController()]
    const first = desk(inputOf('being made'))
    const unwanted = desk(inputOf('unwanted'), { signal: gone.signal })
    const shared = [desk(inputOf('shared'), { signal: alsoGone.signal }), desk(inputOf('shared'))]
    gone.abort()
    alsoGone.abort()
    await expect(unwanted).rejects.toBeInstanceOf(PdfUnwantedError)
    begun[0]?.end(bytes())
    await first
    begun[1]?.end(bytes())
    await Promise.all(shared)
    expect(names()).toEqual(['being made', 'shared'])
    await expect(desk(inputOf('too late'), { signal: gone.signal })).rejects.toBeInstanceOf(PdfUnwantedError)
  })
})

describe('what is kept', () => {
  it('stays within its bytes, and what was asked for last stays longest', () => {
    const kept = keptDocuments(10)
    kept.put('a', bytes(4))
    kept.put('b', bytes(4))
    expect(kept.get('a')).toBeDefined()
    kept.put('c', bytes(4))
    expect(['a', 'b', 'c'].map((key) => kept.get(key) !== undefined)).toEqual([true, false, true])
    kept.put('whole', bytes(11))
    expect(kept.get('whole')).toBeUndefined()
    kept.put('a', bytes(10))
    expect([kept.get('a')?.length, kept.get('c')]).toEqual([10, undefined])
  })
})

describe('with the real maker', () => {
  it('answers with a PDF, and with the same one again', async () => {
    const real = createPdfDesk((input) => renderQuotePdf(input))
    const [made, again] = [await real(inputOf('Ines')), await real(inputOf('Ines'))]
    expect(new TextDecoder().decode(made.subarray(0, 5))).toBe('%PDF-')
    expect(again).toBe(made)
  })
})
