import type { FirstPage, IncludedItem, PageOneLayout } from './paper.ts'
import { linesOf, type WidthOf } from './text-width.ts'

/** Points of the sheet between its side margins of 13 mm. */
export const SHEET_WIDTH_PT = { a4: 521.6, 'us-letter': 538.3 } as const
/** Points between the head of a page and its foot margin. */
export const SHEET_HEIGHT_PT = { a4: 731.3, 'us-letter': 681.4 } as const

export type Density = Pick<PageOneLayout, 'text' | 'row' | 'gap' | 'between' | 'stand' | 'qr' | 'runIn'>

/** Widest first. 8 pt is the least that paper carries, and 62 pt (22 mm) the least at which a telephone reads the code at arm's length. */
export const DENSITIES: readonly Density[] = [
  { text: 9.2, row: 3.1, gap: 13, between: 6, stand: 'whole', qr: 85, runIn: false },
  { text: 8.8, row: 2.5, gap: 11, between: 5, stand: 'whole', qr: 80, runIn: false },
  { text: 8.6, row: 2.1, gap: 9, between: 5, stand: 'whole', qr: 74, runIn: false },
  { text: 8.6, row: 2.1, gap: 9, between: 5, stand: 'cut', qr: 74, runIn: false },
  { text: 8.4, row: 1.7, gap: 8, between: 4, stand: 'cut', qr: 70, runIn: true },
  { text: 8.2, row: 1.3, gap: 7, between: 3.5, stand: 'cut', qr: 66, runIn: true },
  { text: 8, row: 0.9, gap: 6, between: 3, stand: 'cut', qr: 62, runIn: true },
  { text: 8, row: 0.5, gap: 4.5, between: 2.5, stand: 'cut', qr: 62, runIn: true },
]

/** Faces of the house, as widths. */
export interface Faces {
  regular: WidthOf
  strong: WidthOf
  title: WidthOf
}

const LABEL_PT = 71
const COLUMN_GAP_PT = 14
const FACTS_PT = 176
const LINK_PT = 164
const GUTTER_PT = 22.7
/** A heading that fills its line comes one size down before it takes a second line. */
const TITLE_SIZES_PT = [19, 17, 15.5, 14] as const
const LONG_TITLE_PT = 12

/** A page at one density: how wide its columns are and what size its title is. */
export function pageOneLayout(first: FirstPage, density: Density, sheetWidth: number, together: boolean, faces: Faces): PageOneLayout {
  const roomForTitle = sheetWidth - FACTS_PT - GUTTER_PT
  return {
    ...density,
    together,
    title: TITLE_SIZES_PT.find((size) => faces.title(first.title, size) <= roomForTitle) ?? LONG_TITLE_PT,
    facts: FACTS_PT,
    label: LABEL_PT,
    columnGap: COLUMN_GAP_PT,
    price: priceWidth(first, density.text, faces),
    link: LINK_PT,
    suggestLine: first.suggestion === null ? 3 : 12,
  }
}

/** As wide as the longest price with its dip or its vial: alike in every build, so that the columns above and below stand in line. */
function priceWidth(first: FirstPage, size: number, { strong }: Faces): number {
  const prices = first.included.flatMap((slot) => slot.cells.flat()).filter((item) => item.price !== '')
  const signEm = (item: IncludedItem): number => (item.open ? 2.4 : item.sale ? 1.6 : 0)
  return Math.max(3 * size, ...prices.map((item) => strong(item.price, size) + signEm(item) * size + 1))
}

/** Width of one build's column without its gap. */
export const columnWidth = (first: FirstPage, layout: PageOneLayout, sheetWidth: number): number =>
  (sheetWidth - layout.label) / first.builds.length - layout.columnGap

/** What has no price says it in one line: shortly where the long words do not go on one. The long words stand with the build's lines. */
export function inShort(first: FirstPage, layout: PageOneLayout, sheetWidth: number, { regular }: Faces): FirstPage {
  const width = columnWidth(first, layout, sheetWidth)
  const brief = (item: IncludedItem): IncludedItem =>
    item.short !== '' && linesOf(item.text, layout.text, width, regular) > 1 ? { ...item, text: item.short } : item
  return { ...first, included: first.included.map(({ slot, cells }) => ({ slot, cells: cells.map((cell) => cell.map(brief)) })) }
}
