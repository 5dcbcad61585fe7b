import { markup, type Markup } from './markup.ts'

/** A telephone number inside a sentence: seven digits at least, with the signs people put between them. */
const TELEPHONE = /\+?\d[\d ()./-]{5,}\d/

/**
 * Where to ask, as the install prints it; a number in it can be pressed to call.
 *
 * @example contactLine('ask the club, 555-0100') // '<a href="tel:5550100">Ask the club, 555-0100</a>'
 */
export function contactLine(contact: string): Markup | '' {
  const text = contact.trim()
  if (text === '') return ''
  const said = text.charAt(0).toUpperCase() + text.slice(1)
  const number = TELEPHONE.exec(text)?.[0]
  if (number === undefined) return markup`${said}`
  return markup`<a href="tel:${number.replace(/[^\d+]/g, '')}">${said}</a>`
}
