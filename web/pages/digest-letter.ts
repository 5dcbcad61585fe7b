import { letterHtml, type LetterText } from './letter-frame.ts'
import { markup } from './markup.ts'

interface DigestProps {
  place: string
  /** `listed`: of the store's own price list, which nobody saw. */
  deals: ReadonlyArray<{ what: string; where: string; url: string; listed: boolean }>
  /** How many more there are than are listed. */
  more: number
  watchesUrl: string
  stopUrl: string
}

/** Names come from a catalog: one that holds a line break must not begin a line of its own. */
const oneLine = (text: string): string => text.replaceAll(/\s+/g, ' ').trim()

/** The deals since the last letter: plain words, nothing that is fetched, nothing that counts who reads it. */
export function digestLetter({ place, deals, more, watchesUrl, stopUrl }: DigestProps): LetterText {
  const told = deals.map(({ what, where, url }) => ({ what: oneLine(what), where: oneLine(where), url }))
  const [first] = told
  const subject = told.length === 1 && more === 0 && first ? first.what : `${told.length + more} deals on what you watch`
  const isOne = told.length + more === 1
  const [anyListed, anySeen] = [deals.some(({ listed }) => listed), deals.some(({ listed }) => !listed)]
  const lead = anyListed
    ? `${isOne ? 'This is' : 'These are'} at or under what you watch for at ${oneLine(place)}:`
    : `Members of ${oneLine(place)} saw ${isOne ? 'this' : 'these'}:`
  const rest = more > 0 ? `And ${more} more under your watches:` : 'All of them, and your watches:'
  const source = !anyListed
    ? 'as a member saw them'
    : anySeen
      ? 'as a member saw them or the price list has them'
      : 'as the price list has them'
  const why = `You get this since you watch these at ${oneLine(place)}: at most one mail an hour. Prices are with tax, ${source}.`
  const lines = told.map(({ what, where, url }) => `${what}\n${where}\n${url}`).join('\n\n')
  const items = told.map(({ what, where, url }) => markup`<li><a href="${url}">${what}</a><br>${where}</li>`)
  return {
    subject,
    text: `${lead}\n\n${lines}\n\n${rest}\n${watchesUrl}\n\n${why}\nNo more mail: ${stopUrl}\n`,
    html: letterHtml(
      subject,
      markup`<p>${lead}</p><ul>${items}</ul><p><a href="${watchesUrl}">${more > 0 ? `And ${more} more under your watches` : 'Your watches'}</a></p><p>${why} <a href="${stopUrl}">No more mail</a></p>`,
    ),
  }
}
