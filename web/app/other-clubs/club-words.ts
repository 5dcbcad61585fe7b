import type { OtherClub } from '../../../core/other-clubs/other-club.ts'

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`

/** How far a club's prices are of use here, from all of them down to those that enter a build. */
export function sayUse({ prices, ofOurProducts, used, leftOut }: OtherClub): string {
  if (prices === 0) return 'It tells no prices yet.'
  const said = [
    `${count(prices, 'price', 'prices')} told`,
    `${ofOurProducts} of products in your catalog, found by their trade item number`,
    `${used} of those at stores that you matched`,
  ].join('; ')
  return `${said}.${leftOut > 0 ? ` ${count(leftOut, 'more could not be read', 'more could not be read')} or ${leftOut === 1 ? 'was' : 'were'} too old.` : ''}`
}

/** True while a first reading is under way. */
export const isBeingRead = ({ readAt, fault, triedAt }: OtherClub): boolean => triedAt !== null && readAt === null && fault === null
