import { letterHtml, letterLink, type LetterText } from './letter-frame.ts'
import { markup } from './markup.ts'

/** Asks whoever reads the mail of an address whether deals may be told there. Names nobody: it may have gone to a stranger. */
export function confirmLetter({ place, url }: { place: string; url: string }): LetterText {
  const subject = `Confirm your address for deals at ${place}`
  const why = `Somebody with an account at ${place} gave this address to be told of deals there.`
  const yes = 'If that was you, open this link within two days and press the button:'
  const no = 'If it was not, do nothing: no news is sent to an address that nobody confirmed.'
  return {
    subject,
    text: `${why}\n\n${yes}\n${url}\n\n${no}\n`,
    html: letterHtml(subject, markup`<p>${why}</p><p>${yes}</p>${letterLink(url, 'Confirm this address')}<p>${no}</p>`),
  }
}
