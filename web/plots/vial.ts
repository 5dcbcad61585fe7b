import type { Verdict } from '../../core/sizing/finding.ts'
import { sign } from './frame.ts'
import { currentInk, type Colour } from './palette.ts'

/** The class that colours a verdict on a screen (`parts` in tokens.css). */
export const VERDICT_CLASS: Record<Verdict, string> = {
  fits: 'fits',
  marginal: 'marginal',
  does_not_fit: 'not-fit',
  not_known: 'not-known',
}

const COLOUR: Record<Verdict, Colour> = { fits: 'glass', marginal: 'marginal', does_not_fit: 'not-fit', not_known: 'ink' }

const tube = (ink: string, dash = ''): string =>
  `<rect x=".75" y=".75" width="26.5" height="12.5" rx="6.25" fill="none" stroke="${ink}" stroke-width="1.5"${dash}/>`
const bubble = (ink: string, x: number): string => `<ellipse cx="${x}" cy="7" rx="3.7" ry="3.4" fill="${ink}"/>`
const lines = (ink: string, path: string): string => `<path d="${path}" fill="none" stroke="${ink}" stroke-width="1.25"/>`

/** Four shapes that differ without colour: between the marks, on a mark, past both in a filled vial, none in a dashed one. */
const SHAPES: Record<Verdict, (ink: string) => string> = {
  fits: (ink) => tube(ink) + lines(ink, 'M9 1v12M19 1v12') + bubble(ink, 14),
  marginal: (ink) => tube(ink) + lines(ink, 'M9 1v12M19 1v2.1M19 10.9V13') + bubble(ink, 19),
  does_not_fit: (ink) =>
    `<path fill="${ink}" fill-rule="evenodd" d="M7 0h14a7 7 0 0 1 0 14H7A7 7 0 0 1 7 0zm14.6 3.4a3.7 3.6 0 1 0 .01 7.2 3.7 3.6 0 0 0-.01-7.2zM8.4 1.2v11.6h1.3V1.2zM15.4 1.2v11.6h1.3V1.2z"/>`,
  not_known: (ink) =>
    tube(ink, ' stroke-dasharray="3 2.2"') + lines(ink, 'M12.1 5.2c0-1.3.9-2 2-2s2 .8 2 1.8c0 1.6-2 1.6-2 3.1M14.1 9.6v1.3'),
}

/** A verdict as the bubble of a level. The word always stands beside it, so the vial itself is silent. @example vial('fits') */
export const vial = (verdict: Verdict, options: { paper?: boolean } = {}): string =>
  sign({ width: 28, height: 14, className: 'vial' }, SHAPES[verdict](currentInk(options.paper, COLOUR[verdict])))
