import { markup, type Markup } from './markup.ts'

/** A telephone number inside a sentence: seven digits at least, with the signs people put between them. */
const TELEPHONE = /\+?\d[\d ()./-]{5,}\d/

/** The install's own words as a sentence begins. @example sayContact('ask the club') // 'Ask the club' */
export const sayContact = (contact: string): string => contact.trim().charAt(0).toUpperCase() + contact.trim().slice(1)

/**
 * Where to ask, as the install prints it; a number in it can be pressed to call.
 *
 * @example contactLine('ask the club, 555-0100') // '<a href="tel:5550100">Ask the club, 555-0100</a>'
 */
export function contactLine(contact: string): Markup | '' {
  const text = contact.trim()
  if (text === '') return ''
  const said = sayContact(text)
  const number = TELEPHONE.exec(text)?.[0]
  if (number === undefined) return markup`${said}`
  return markup`<a href="tel:${number.replace(/[^\d+]/g, '')}">${said}</a>`
}
