import type { BuildLetter, QuoteState } from '../../../core/quote/draft.ts'
import type { QuoteView } from '../../../core/quote/quote-view.ts'
import type { Saving } from './desk-state.ts'

export const STATE_WORDS: Record<QuoteState, string> = {
  draft: 'draft', issued: 'issued', accepted: 'accepted', declined: 'declined', lapsed: 'lapsed', withdrawn: 'withdrawn',
} // prettier-ignore

/** Nothing in it changes any more. */
export const isClosed = (state: QuoteState): boolean => state === 'accepted' || state === 'withdrawn'

/**
 * That a quote changes no more, and why.
 *
 * @example sayClosed('accepted', 'B', '4 October') // 'Accepted B on 4 October: it no longer changes'
 */
export function sayClosed(state: QuoteState, letter: BuildLetter | null, on: string | null): string {
  const what = state === 'accepted' ? ['Accepted', letter].filter(Boolean).join(' ') : 'Withdrawn'
  return `${what}${state === 'accepted' && on ? ` on ${on}` : ''}: it no longer changes`
}

/** "10:42" of an instant in the install's zone. */
export const sayClock = (instant: string, timeZone: string): string =>
  new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit' }).format(new Date(instant))

/** Where the quote stands: "Quote 2026-0147, version 2 issued". A quote has no number before its first issue. */
export function sayQuote(view: Pick<QuoteView, 'number' | 'state' | 'revisions'>): string {
  if (view.number === null) return 'New quote, draft'
  const newest = view.revisions.at(-1)?.revision
  return `Quote ${view.number}${newest === undefined ? ', ' : `, version ${newest} `}${STATE_WORDS[view.state]}`
}

/** Where the draft stands, as the heading says it. */
export function saySaving(saving: Saving, savedAt: string, timeZone: string): string {
  switch (saving.state) {
    case 'saved':
      return `saved ${sayClock(savedAt, timeZone)}`
    case 'edited':
    case 'sending':
      return 'saving'
    case 'failed':
    case 'conflict':
    case 'closed':
    case 'gone':
      return 'not saved'
  }
}
