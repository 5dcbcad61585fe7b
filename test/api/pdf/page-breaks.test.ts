import { afterAll, describe, expect, it } from 'vitest'
import { closePdfWorker, renderQuotePdf } from '../../../api/pdf/render-quote-pdf.ts'
import type { RevisionDocument } from '../../../core/quote/revision.ts'
import { sampleRevision } from '../../support/sample-revision.ts'
import { readPdf } from './pdf-reader.ts'

const WORDS = 'One word more of what stands here. '

afterAll(closePdfWorker)

async function pagesOf(document: RevisionDocument, paper: 'a4' | 'letter' = 'a4'): Promise<string[]> {
  const { pages } = await readPdf(await renderQuotePdf({ document, customerName: 'Ines Tillish', paper, links: null, draft: false }))
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

/** The sample with steps left out of the checklist's end: its log stands higher up, or on a page of its own. */
function endsSooner(count: number): RevisionDocument {
  const document = sampleRevision()
  return {
    ...document,
    builds: document.builds.map((build) => ({
      ...build,
      plan: { ...build.plan, steps: build.plan.steps.slice(0, build.plan.steps.length - count) },
    })),
  }
}

/** The sample with so many checks fewer told in full: what is reckoned ends higher up on its last page, or on the one before. */
function reckonsLess(count: number): RevisionDocument {
  const document = sampleRevision()
  return {
    ...document,
    builds: document.builds.map((build, index) =>
      index > 0
        ? build
        : { ...build, report: { ...build.report, findings: build.report.findings.slice(0, build.report.findings.length - count) } },
    ),
  }
}

/** Letters of a page that is not left nearly empty: about a sixth of a full page of the appendix, which holds some 5000. */
const LEAST_LETTERS = 900

describe('where the pages of a quote end', () => {
  it.each([
    ['a4', 0],
    ['a4', 1],
    ['a4', 2],
    ['a4', 3],
    ['letter', 0],
  ] as const)('the last page is not left to a row or two, on %s, with %i checks fewer', async (paper, fewer) => {
    const pages = await pagesOf(reckonsLess(fewer), paper)
    expect(pages.at(-1)).toContain('How it was reckoned')
    expect(pages.at(-1)?.length).toBeGreaterThan(LEAST_LETTERS)
  })

  it.each(['a4', 'letter'] as const)('what the pages rest on stands behind the checklist and its log, on %s', async (paper) => {
    const pages = await pagesOf(sampleRevision(), paper)
    const at = (words: string): number => pages.findIndex((page) => page.includes(words))
    expect(at('Startup checklist')).toBeGreaterThan(0)
    expect(at('Water-test log')).toBeGreaterThanOrEqual(at('Startup checklist'))
    for (const words of ['Build B, line by line', 'Build C, line by line', 'How it was reckoned'])
      expect(at(words), words).toBeGreaterThan(at('Water-test log'))
    expect(at('Build B, line by line')).toBeLessThanOrEqual(9)
    expect(pages[1]).toContain(`how each came about: from page ${at('How it was reckoned') + 1}`)
    expect(pages[0]).toContain(`last day on page 2 and from ${at('Build B, line by line') + 1}`)
  })

  it.each([0, 3, 6, 9])('no step of the checklist is parted or left out, with %i lines more before it', async (lines) => {
    const document = movedDown(lines)
    const pages = await pagesOf(document)
    const steps = document.builds[0]?.plan.steps ?? []
    expect(steps.length).toBeGreaterThan(15)
    for (const [index, { title, done }] of steps.entries()) {
      const page = pages.find((each) => each.includes(` ${index + 1} ${title} `))
      expect(page, title).toContain(done)
    }
  })

  it.each([
    ['letter', 0],
    ['letter', 11],
    ['a4', 1],
    ['a4', 6],
  ] as const)('no row of the log goes over to a page of its own, on %s, with %i steps fewer', async (paper, fewer) => {
    const pages = await pagesOf(endsSooner(fewer), paper)
    const withLog = pages.filter((page) => page.includes('Nitrite, mg/L'))
    expect(withLog).toHaveLength(1)
    expect(withLog[0]).toContain('Water-test log')
  })

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
