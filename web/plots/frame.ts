import { escapeText } from './escape-text.ts'

export interface PlotOptions {
  /** Unique in the document that holds the drawing: title, description and patterns are named after it. */
  id: string
  /** True writes literal colours and names the type family, for paper; else both come from the page. */
  paper?: boolean
}

interface Frame extends PlotOptions {
  width: number
  height: number
  title: string
  desc: string
  className: string
}

/**
 * A coordinate with one decimal: finer than a pixel, and the same text from every engine.
 *
 * Errors: RangeError for a number that is not finite, since a drawing of it would be silently wrong.
 *
 * @example px(3.14159) // '3.1'
 */
export function px(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a coordinate is ${value}`)
  const rounded = Math.round(value * 10) / 10
  return String(rounded === 0 ? 0 : rounded)
}

const FAMILY = ' font-family="Archivo"'

/** An SVG that says what it shows: a picture with title and description to a screen reader. */
export function framed(frame: Frame, body: string): string {
  const id = escapeText(frame.id)
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="${frame.className}" viewBox="0 0 ${px(frame.width)} ${px(frame.height)}" width="${px(frame.width)}" height="${px(frame.height)}"` +
    ` role="img" aria-labelledby="${id}-t ${id}-d"${frame.paper === true ? FAMILY : ''}>` +
    `<title id="${id}-t">${escapeText(frame.title)}</title><desc id="${id}-d">${escapeText(frame.desc)}</desc>${body}</svg>`
  )
}

/** A small sign that stands beside its word, or that carries its word as a label where there is none. */
export function sign(size: { width: number; height: number; className: string; label?: string }, body: string): string {
  const told = size.label === undefined ? 'aria-hidden="true"' : `role="img" aria-label="${escapeText(size.label)}"`
  return `<svg xmlns="http://www.w3.org/2000/svg" class="${size.className}" viewBox="0 0 ${size.width} ${size.height}" width="${size.width}" height="${size.height}" ${told}>${body}</svg>`
}

interface Label {
  x: number
  y: number
  text: string
  fill: string
  anchor?: 'start' | 'middle' | 'end'
  size?: number
  weight?: number
  /** Colour of a thin ground behind the letters, where lines cross them. */
  ground?: string
}

/** One line of text. Nothing on a screen is smaller than 12 px. */
export function label(of: Label): string {
  const anchor = of.anchor === undefined || of.anchor === 'start' ? '' : ` text-anchor="${of.anchor}"`
  const weight = of.weight === undefined ? '' : ` font-weight="${of.weight}"`
  const ground = of.ground === undefined ? '' : ` paint-order="stroke" stroke="${of.ground}" stroke-width="3"`
  return `<text x="${px(of.x)}" y="${px(of.y)}"${anchor} font-size="${of.size ?? 12}"${weight} fill="${of.fill}"${ground}>${escapeText(of.text)}</text>`
}

/** Mean advance of Archivo's digits and lower-case letters, as a share of the size; a little wide, so that nothing touches. */
const MEAN_ADVANCE = 0.53

/** About how wide a line of text is, for laying out without a font at hand. @example textWidth('48 in', 12) // 31.8 */
export const textWidth = (text: string, size: number): number => Math.round(text.length * size * MEAN_ADVANCE * 10) / 10

/** Text cut to a width, with its ending shown by three dots. @example fitText('Kettle Lane', 40, 12) // 'Kettl…' */
export function fitText(text: string, width: number, size: number): string {
  if (textWidth(text, size) <= width) return text
  const letters = Math.max(1, Math.floor(width / (size * MEAN_ADVANCE)) - 1)
  return `${[...text].slice(0, letters).join('').trimEnd()}…`
}
