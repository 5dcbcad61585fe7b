import { afterAll, describe, expect, it } from 'vitest'
import { closePdfWorker, renderQuotePdf } from '../../../api/pdf/render-quote-pdf.ts'
import type { RevisionDocument } from '../../../core/quote/revision.ts'
import { sampleRevision } from '../../support/sample-revision.ts'
import { readPdf } from './pdf-reader.ts'

const WORDS = 'One word more of what stands here. '

afterAll(closePdfWorker)

async function pagesOf(document: RevisionDocument): Promise<string[]> {
  const { pages } = await readPdf(await renderQuotePdf({ document, customerName: 'Ines Tillish', paper: 'a4', links: null, draft: false }))
  return pages.map((page) => page.replace(/\s+/g, ' '))
}

/** The sample with so many lines of a note at the first parts of build A: whatever follows moves down by as much. */
function movedDown(lines: number): RevisionDocument {
  const document = sampleRevision()
  return {
    ...document,
    builds: document.builds.map((build, index) =>
      index > 0 ? build : { ...build, rows: build.rows.map((row, at) => ({ ...row, lineNote: at < lines ? 'Line.' : '' })) },
    ),
  }
}

describe('where the pages of a quote end', () => {
  it.each([0, 1, 2, 3, 4, 5, 6, 7, 8])('a total stands with a receipt above it, with %i lines more before it', async (lines) => {
    const pages = await pagesOf(movedDown(lines))
    const totals = pages.filter((page) => page.includes('Today, all receipts'))
    expect(totals.length).toBeGreaterThan(0)
    for (const page of totals) expect(page).not.toMatch(/Total Today, all receipts/)
  })

  it.each([52, 58, 60, 62, 64, 66])('what is included begins with four parts or on the next page, under %i sentences', async (count) => {
    const [first = ''] = await pagesOf({ ...sampleRevision(), note: WORDS.repeat(count) })
    const [, begun] = /What is included, at today.s price(.*)$/.exec(first) ?? []
    const parts = ['Tank', 'Lid', 'Filter', 'Heater'].filter((part) => begun?.includes(`${part} `))
    expect([0, 4]).toContain(parts.length)
    if (begun !== undefined) expect(parts).toHaveLength(4)
  })
})
