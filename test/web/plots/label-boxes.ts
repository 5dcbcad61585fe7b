import { textWidth } from '../../../web/plots/frame.ts'

interface Box {
  text: string
  left: number
  right: number
  top: number
  bottom: number
}

/** Where the letters of a drawing stand, by the same mean advance that it is laid out with: capitals reach 0.72 of the size up, tails 0.2 down. */
export function labelBoxes(svg: string): Box[] {
  return [...svg.matchAll(/<text x="([-\d.]+)" y="([-\d.]+)"([^>]*)>([^<]*)<\/text>/g)].map(([, x = '', y = '', rest = '', text = '']) => {
    const size = Number(/font-size="([\d.]+)"/.exec(rest)?.[1])
    const wide = textWidth(text.replace(/&\w+;|&#\d+;/g, 'x'), size)
    const anchor = /text-anchor="(\w+)"/.exec(rest)?.[1]
    const left = Number(x) - (anchor === 'end' ? wide : anchor === 'middle' ? wide / 2 : 0)
    return { text, left, right: left + wide, top: Number(y) - size * 0.72, bottom: Number(y) + size * 0.2 }
  })
}

/** Pairs of words that lie over each other by more than a pixel. */
export function collisions(svg: string): string[] {
  const boxes = labelBoxes(svg)
  return boxes.flatMap((a, index) =>
    boxes
      .slice(index + 1)
      .filter((b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1)
      .map((b) => `${a.text} / ${b.text}`),
  )
}

/** Words that run over the sheet. A mean advance is a little wide, so that two pixels are let go. */
export function spilling(svg: string): string[] {
  const [, , width = 0, height = 0] = (/viewBox="([^"]+)"/.exec(svg)?.[1] ?? '').split(' ').map(Number)
  return labelBoxes(svg)
    .filter((box) => box.left < -2 || box.right > width + 2 || box.top < -1 || box.bottom > height + 1)
    .map(({ text }) => text)
}

export const letterSizes = (svg: string): number[] => [...svg.matchAll(/font-size="([\d.]+)"/g)].map(([, size]) => Number(size))
