import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { HeaterChoice } from './heater-choice.ts'

/** Powers that heaters are commonly sold with, W. Common practice. */
const RATINGS_W = [25, 50, 75, 100, 150, 200, 250, 300] as const

type Powers = Pick<HeaterChoice, 'eachLowestW' | 'eachHighestW'>

const watts = (value: number) => quantity(value, 'W', 0)

/** Those of the powers commonly sold that lie in a range, W. @example ratingsIn({ eachLowestW: 95, eachHighestW: 160 }) // [100, 150] */
export const ratingsIn = ({ eachLowestW, eachHighestW }: Powers): number[] =>
  RATINGS_W.filter((each) => each >= eachLowestW && each <= eachHighestW)

/**
 * What to ask for in a shop: a power that is sold, two of them, or from one to another; the range itself where none is.
 *
 * @example sayPower({ eachLowestW: 95, eachHighestW: 125 }) // 100 W
 */
export function sayPower({ eachLowestW, eachHighestW }: Powers): Phrase {
  const ratings = ratingsIn({ eachLowestW, eachHighestW })
  const [low = eachLowestW, high = eachHighestW] = [ratings[0], ratings.at(-1)]
  if (low === high) return phrase`${watts(low)}`
  return ratings.length === 2 ? phrase`${watts(low)} or ${watts(high)}` : phrase`${watts(low)} to ${watts(high)}`
}

/** The least power that is sold and is enough; the figure itself where none is. @example sayLeast(115) // 150 W */
export const sayLeast = (leastW: number): Phrase => phrase`${watts(RATINGS_W.find((each) => each >= leastW) ?? leastW)}`

/**
 * What there is to say of a range of which none is sold, and what to take then; nothing more where a controller is told of beside it.
 *
 * @example sayUnsold({ count: 2, eachLowestW: 105, eachHighestW: 105 }) // None of that power is commonly sold: …
 */
export function sayUnsold({ count, eachLowestW, eachHighestW }: Powers & Pick<HeaterChoice, 'count'>, isControllerTold = false): Phrase {
  if (ratingsIn({ eachLowestW, eachHighestW }).length > 0) return phrase``
  const next = RATINGS_W.find((each) => each > eachHighestW)
  if (next === undefined || isControllerTold) return phrase` None of that power is commonly sold.`
  const each = count === 1 ? 'one of' : `${count} of`
  return phrase` None of that power is commonly sold: ${each} ${watts(next)} would do with an external controller against one that sticks on.`
}
