import type { Art } from './art.ts'
import { pageOneHeight } from './page-one-height.ts'
import { DENSITIES, inShort, pageOneLayout, SHEET_HEIGHT_PT, SHEET_WIDTH_PT, type Faces } from './page-one-layout.ts'
import type { FirstPage, Paper, PageOneLayout } from './paper.ts'

export interface LaidOut {
  first: FirstPage
  layout: PageOneLayout
}

/**
 * The ways to lay page one out, the most likely to be right first and each closer than the one before: everything together at the widest
 * density that is reckoned to hold, then what is included on the next page. The last is taken whether it holds or not.
 */
export function waysToLayOut(paper: Paper, art: Art, faces: Faces): LaidOut[] {
  const sheetWidth = SHEET_WIDTH_PT[paper.size]
  const ways = [true, false].flatMap((together) =>
    DENSITIES.map((density) => {
      const layout = pageOneLayout(paper.first, density, sheetWidth, together, faces)
      const first = inShort(paper.first, layout, sheetWidth, faces)
      const height = pageOneHeight({ first, layout, sheetWidth, drawing: drawingHeight(paper.first, art, layout.stand), faces })
      return { first, layout, height }
    }),
  )
  const widest = ways.findIndex(({ height }) => height <= SHEET_HEIGHT_PT[paper.size])
  return ways.slice(widest === -1 ? -1 : widest).map(({ first, layout }) => ({ first, layout }))
}

/** Lettering of 12 px comes out at 8 pt. */
const PT_PER_PX = 8 / 12

export function drawingHeight({ builds }: FirstPage, art: Art, stand: 'whole' | 'cut'): number {
  const heights = builds.map(({ letter }) => Number(/ height="([\d.]+)"/.exec(art[`tank-${stand}-${letter}`] ?? '')?.[1] ?? 0))
  return Math.max(0, ...heights) * PT_PER_PX
}
