import { drawing, type Markup } from './markup.ts'

/** Eight corners and a bar: stop, beside the words that say why. */
export const stopSign = (): Markup =>
  drawing(
    '<svg class="stop-sign" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true"><path d="M6 1h8l5 5v8l-5 5H6l-5-5V6z" fill="none" stroke="currentColor" stroke-width="1.6"/><path d="M10 5v6.5M10 13.4v1.9" stroke="currentColor" stroke-width="2"/></svg>',
  )

export const doneSign = (): Markup =>
  drawing(
    '<svg class="done-sign" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true"><path d="M2.5 8.6l3.6 3.7 7.4-8.6" fill="none" stroke="currentColor" stroke-width="2"/></svg>',
  )
