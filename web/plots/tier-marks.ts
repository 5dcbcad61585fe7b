import { sign } from './frame.ts'
import { currentInk, type Colour } from './palette.ts'

export type TierName = 'full' | 'today' | 'byDate' | 'bestSeen'

const SHAPES: Record<TierName, (ink: string) => string> = {
  full: (ink) => `<path d="M1 2.5h14" stroke="${ink}" stroke-width="2"/><path d="M8 3v12" stroke="${ink}" stroke-dasharray="1.5 1.8"/>`,
  today: (ink) =>
    `<path d="M1 11h14" stroke="${ink}" stroke-width="2"/><path d="M3.6 2.5h8.8L8 9.2z" fill="${ink}"/><path d="M4.5 13.6h7" stroke="${ink}"/>`,
  byDate: (ink) =>
    `<path d="M1 11h14" stroke="${ink}" stroke-width="2" stroke-dasharray="2.2 1.7"/><path d="M4.2 3h7.6L8 8.8z" fill="none" stroke="${ink}" stroke-width="1.3"/>`,
  bestSeen: (ink) =>
    `<path d="M1 13.5h14" stroke="${ink}" stroke-width="2"/><path d="M8 1v10" stroke="${ink}" stroke-dasharray="1.5 1.8"/><path d="M5.2 8.6L8 11.6l2.8-3" fill="none" stroke="${ink}" stroke-width="1.3"/>`,
}
const COLOUR: Record<TierName, Colour> = { full: 'ink', today: 'glass', byDate: 'ink', bestSeen: 'ink' }

/** The mark of a cost tier: the top of the staff, the level now, its foot. The tier's name stands beside it. */
export const tierMark = (tier: TierName, options: { paper?: boolean } = {}): string =>
  sign({ width: 16, height: 16, className: 'tier-mark' }, SHAPES[tier](currentInk(options.paper, COLOUR[tier])))
