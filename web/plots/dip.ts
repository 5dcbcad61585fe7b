import { sign } from './frame.ts'
import { currentInk } from './palette.ts'

/** The sign of a sale: a line that goes down and up. Give a label where no word stands beside it. @example dip({ label: 'on sale' }) */
export const dip = (options: { paper?: boolean; label?: string } = {}): string =>
  sign(
    { width: 14, height: 10, className: 'dip', ...(options.label === undefined ? {} : { label: options.label }) },
    `<path d="M.5 2h4.2v6h4.6V2h4.2" fill="none" stroke="${currentInk(options.paper, 'sale')}" stroke-width="1.7"/>`,
  )
