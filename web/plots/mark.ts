import { sign } from './frame.ts'
import { currentInk } from './palette.ts'

/** Our mark: a cord with its loop and one drop. It stands beside the name, so it is silent to a screen reader. */
export function markSvg(options: { paper?: boolean } = {}): string {
  const ink = currentInk(options.paper, 'glass')
  return sign(
    { width: 30, height: 22, className: 'mark-sign' },
    `<path d="M1 4h6c6 0 4 11 9 11s4-8 8-8h5" fill="none" stroke="${ink}" stroke-width="2.4" stroke-linecap="square"/>` +
      `<path d="M16 17.2c1 1.3 1.7 2.1 1.7 3a1.7 1.7 0 0 1-3.4 0c0-.9.7-1.7 1.7-3z" fill="${ink}"/>`,
  )
}
