import { columnWidth, type Faces } from './page-one-layout.ts'
import type { FirstPage, IncludedItem, PageOneLayout } from './paper.ts'
import { linesOf } from './text-width.ts'

/** Of the template: letters take 1.02 em of height, and 0.26 em lie between the lines of a paragraph. */
const LINE_EM = 1.02
const LEADING_EM = 0.26
/** A vial with the space before its word, in em of its text. */
const VIAL_EM = 2.6
const GUTTER_PT = 22.7
const FACT_LABEL_PT = 56.7

const paragraph = (lines: number, size: number): number => lines * (LINE_EM + LEADING_EM) * size - LEADING_EM * size
const sum = (values: number[]): number => values.reduce((total, value) => total + value, 0)

/** Where a page is reckoned: what is on it, how it is laid out, and how wide and how tall its parts are. */
export interface PageOne {
  first: FirstPage
  layout: PageOneLayout
  sheetWidth: number
  /** Height of the tallest tank drawing. */
  drawing: number
  faces: Faces
}

/**
 * Height that page one takes, reckoned from the lengths of its texts, so that it need not be laid out at every density to find the right one.
 *
 * Units: points. Exact to some two per cent: the page that was made says whether it held.
 */
export function pageOneHeight(page: PageOne): number {
  const { gap, together, text } = page.layout
  const middle = together ? gap + includedHeight(page) : gap / 2 + LINE_EM * text
  return introHeight(page) + gap + tiersHeight(page) + middle + gap / 2 + footHeight(page)
}

export function introHeight({ first, layout, sheetWidth, faces }: PageOne): number {
  const { text, title, facts } = layout
  const left = sheetWidth - facts - GUTTER_PT
  const titleLines = linesOf(first.title, title, left, faces.title)
  const needLines = linesOf(first.need, text, left, faces.regular)
  const since = first.since === '' ? 0 : 2 + paragraph(linesOf(first.since, text, left, faces.strong), text)
  const customer = LINE_EM * (text + 0.8) + LEADING_EM * text
  const factRows = first.facts.map(({ value, strong }) => {
    return paragraph(linesOf(value, text, facts - FACT_LABEL_PT, strong ? faces.strong : faces.regular), text) + 3.2
  })
  return Math.max(paragraph(titleLines, title) + 2 + customer + paragraph(needLines, text) + since, sum(factRows))
}

export function tiersHeight(page: PageOne): number {
  const { first, layout } = page
  const { text, row } = layout
  const width = columnWidth(first, layout, page.sheetWidth)
  const heads = first.builds.map((build) => headHeight(build, page, width))
  const rows = first.tiers.map(({ strong, cells }) => {
    const words = cells.map((cell) =>
      cell.figure === null
        ? linesOf(cell.words, text, width - VIAL_EM * text, page.faces.strong)
        : cell.range !== undefined && cells.length > 3
          ? 2
          : 1,
    )
    return Math.max(strong ? 13 * LINE_EM : 1.12 * text, paragraph(Math.max(...words), text)) + 2 * row
  })
  const counts = first.sizing.map((each) => countsHeight(each, page, width))
  return Math.max(...heads) + 2 * row + sum(rows) + Math.max(LINE_EM * text, ...counts) + 2 * row
}

function headHeight(build: FirstPage['builds'][number], { layout, drawing, faces }: PageOne, width: number): number {
  const { text, suggestLine, runIn } = layout
  const nameLines = linesOf(`${build.letter} ${build.name}`, 11, width, faces.title)
  const told = runIn
    ? linesOf(`${build.size}. ${build.why}`, text, width, faces.regular)
    : linesOf(build.size, text, width, faces.regular) + linesOf(build.why, text, width, faces.regular)
  return suggestLine + drawing + 1 + nameLines * 11 * LINE_EM + told * text * LINE_EM + (nameLines + told - 1) * LEADING_EM * text + 3
}

function countsHeight(counts: FirstPage['sizing'][number], { layout, faces }: PageOne, width: number): number {
  const size = 8
  if (layout.stand === 'whole') return counts.length * (size * LINE_EM + 2) - 2
  let lines = 1
  let used = 0
  for (const { words } of counts) {
    const wide = VIAL_EM * size + faces.strong(words, size)
    if (used > 0 && used + 9 + wide > width) {
      lines += 1
      used = wide
    } else used += (used > 0 ? 9 : 0) + wide
  }
  return lines * size * LINE_EM + (lines - 1) * LEADING_EM * layout.text
}

export function includedHeight(page: PageOne): number {
  const { first, layout } = page
  const { text, row, label } = layout
  const rows = first.included.flatMap(({ slot, cells }) => {
    const most = Math.max(...cells.map((cell) => cell.length))
    return Array.from({ length: most }, (_, index) =>
      Math.max(
        index === 0 ? linesOf(slot, text, label, page.faces.regular) : 1,
        ...cells.map((cell) => (cell[index] ? itemLines(cell[index], page) : 1)),
      ),
    )
  })
  const header = 9 * LINE_EM + 3 + Math.max(9, text) * LINE_EM + 2 * row
  const sums = first.sums.map(({ strong, label: words }) => {
    const lines = linesOf(words, text, label, strong ? page.faces.strong : page.faces.regular)
    return Math.max(paragraph(lines, text), (strong ? 10.5 : text) * LINE_EM) + 2 * row
  })
  return header + sum(rows.map((lines) => paragraph(lines, text) + 2 * row)) + sum(sums)
}

function itemLines(item: IncludedItem, { first, layout, sheetWidth, faces }: PageOne): number {
  const whole = columnWidth(first, layout, sheetWidth)
  const width = item.price === '' ? whole : whole - layout.price
  return item.open && item.price === ''
    ? linesOf(item.text, layout.text, width - VIAL_EM * layout.text, faces.strong)
    : linesOf(item.text, layout.text, width, faces.regular)
}

export function footHeight({ first, layout, sheetWidth, faces }: PageOne): number {
  const { text, between } = layout
  const left = first.link === null ? sheetWidth : sheetWidth - layout.link - GUTTER_PT
  const told = (words: string, width: number): number => paragraph(linesOf(words, text, width, faces.regular), text)
  const headLines = linesOf(`We suggest ${first.suggestion?.letter}, ${first.suggestion?.name}`, 11, left, faces.title)
  const suggested = first.suggestion === null ? 0 : paragraph(headLines, 11) + 1 + told(first.suggestion.reason, left) + 1.5 * between
  const findings = first.findings.map((each) => {
    const lead = (VIAL_EM * 8.2 + faces.strong(`${each.word} ${each.title} (${each.letters}). `, text)) / faces.regular('0', text)
    return told(`${'0'.repeat(Math.round(lead))} ${each.sentence} ${each.action === '' ? '' : `Do:  ${each.action}`}`, left) + between
  })
  const decide = suggested + 11 * LINE_EM + 2 + (findings.length === 0 ? LINE_EM * text : sum(findings) - between)
  const asked = first.questions.length === 0 ? 0 : between + told(`Worth finding out first:  ${first.questions.join(' ')}`, left)
  const note = first.note === '' ? '' : `Note: ${first.note} `
  const notIncluded = told(`Not included: ${first.notIncluded} ${note}${first.priceNote}`, sheetWidth)
  const caution = linesOf(first.caution, 8, sheetWidth, faces.regular) * 8 * LINE_EM + LEADING_EM * text
  return Math.max(decide + asked, linkHeight(first, layout, faces)) + 3 * between + notIncluded + 3 + caution
}

function linkHeight({ link }: FirstPage, layout: PageOneLayout, faces: Faces): number {
  if (link === null) return 0
  const words = paragraph(linesOf(link.words, layout.text, layout.link - layout.qr - 11.3, faces.regular), layout.text)
  return Math.max(layout.qr, words) + 3 + paragraph(linesOf(link.address, 8, layout.link, faces.strong), 8)
}
