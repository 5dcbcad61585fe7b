import { sayDate, sayWeekday, yearOf, type CivilDate } from '../../dates.ts'
import { sayMoney } from '../../money.ts'
import type { LineOutlook } from './line-outlook.ts'

export interface AdviceWords {
  /** "Wait: buy at $178.00 or under", "Buy now", "No hurry until Sun, Nov 29", "Buy when convenient": the one price to act on is here or today's. */
  title: string
  /** What it rests on, in a sentence or a few. */
  words: string
}

/** Whose words, in which money, by when. */
export interface AdviceReader {
  currency: string
  asOf: CivilDate
  until: CivilDate
  /** What the customer holds a week's wait to be worth, minor units; 0: nothing, so that only the date ends it, and that is said. */
  weekWaitMinor: number
  /** Amounts are with tax; a price to buy at is always the tag's. */
  withTax: boolean
}

/** What the record has of a product without a price: the newest used one, where one was reported. */
export interface UsedSeen {
  priceMinor: number
  seenOn: CivilDate
}

type Told = Omit<LineOutlook, 'priceToBuyAt'>
type Money = (minor: number) => string

/** The advice of a line in words a beginner acts on. Amounts are for the whole line, the price to buy at is that of one on its tag. */
export function sayAdvice(line: Told, reader: AdviceReader, used: UsedSeen | null = null): AdviceWords {
  const money: Money = (minor) => sayMoney(minor, reader.currency)
  const until = sayDate(reader.until, yearOf(reader.asOf))
  if (Number.isNaN(line.payTodayMinor)) return { title: 'No price known', words: sayUnknown(used, money, reader) }
  if (reader.until <= reader.asOf)
    return { title: 'Buy now', words: `Today is the day it is to be bought by. It costs ${money(line.payTodayMinor)} today.` }
  switch (line.advice) {
    case 'buy_now':
      return { title: 'Buy now', words: sayNow(line, money, until, reader) }
    case 'no_hurry': {
      const day = line.noHurryUntil === null ? until : sayWeekday(line.noHurryUntil, yearOf(reader.asOf))
      return { title: `No hurry until ${day}`, words: sayNoHurry(line, money, reader) }
    }
    case 'buy_when_convenient':
      return { title: 'Buy when convenient', words: sayConvenient(line, until) }
    case 'wait':
      return { title: `Wait: buy at ${money(line.buyAtTagMinor)} or under`, words: sayWait(line, money, until, reader) }
  }
}

function sayUnknown(used: UsedSeen | null, money: Money, { asOf }: AdviceReader): string {
  if (used === null) return 'Nobody has reported a price at these stores within 180 days. Look it up first.'
  const seen = `${money(used.priceMinor)} on ${sayDate(used.seenOn, yearOf(asOf))}`
  return `Reported only as used, ${seen}. What a used one costs says little of the next one: nothing is expected of it.`
}

function sayNow({ payTodayMinor, saleLastDay, basis }: Told, money: Money, until: string, { asOf }: AdviceReader): string {
  const holds = saleLastDay === asOf ? 'that holds for today only' : 'whose last day is not known'
  const better = basis === 'too_little' ? TOO_LITTLE : `Waiting is not expected to find a better one by ${until}.`
  return `${money(payTodayMinor)} is a sale price ${holds}. ${better}`
}

function sayNoHurry({ payTodayMinor, noHurryUntil, basis }: Told, money: Money, { until }: AdviceReader): string {
  if (noHurryUntil === until) return `${money(payTodayMinor)} holds to that day, by which it is to be bought.`
  return `${money(payTodayMinor)} holds to that day. ${basis === 'too_little' ? TOO_LITTLE : 'Waiting beyond it is not expected to pay.'}`
}

const TOO_LITTLE = 'Too little is recorded here to say whether a sale will come after it.'

function sayConvenient(line: Told, until: string): string {
  if (line.basis === 'too_little') return 'Too little is recorded here to say whether a sale will come.'
  return `Waiting until ${until} is not expected to save enough to be worth it. ${sayShelf(line)}`.trim()
}

function sayWait(line: Told, money: Money, until: string, { weekWaitMinor, withTax }: AdviceReader): string {
  const tax = withTax ? ' with tax' : ''
  const chance = line.likely
    ? `About ${line.likely.many} in ${line.likely.of} to pay ${money(line.likely.paidMinor)} or less${tax} by ${until}.`
    : `On average ${money(line.expectedPaidMinor)}${tax} is paid by ${until}.`
  const tag = line.quantity > 1 ? 'The price to buy at is that of one on its tag.' : withTax ? 'The price to buy at is the tag’s.' : ''
  const rests = line.basis === 'kind' ? 'This rests on products of its kind.' : ''
  const cost =
    weekWaitMinor > 0
      ? `A week’s wait is counted as ${money(weekWaitMinor)}.`
      : 'Waiting is taken to cost nothing, so that only the date ends it.'
  return [chance, tag, sayShelf(line), rests, cost].filter((sentence) => sentence !== '').join(' ')
}

/** A drift of the shelf price that is smaller is not told. */
const DRIFT_TOLD = 0.01

/** Why a later day may be the dearer one; empty where the shelf price is expected to stay. */
function sayShelf({ regularMinor, regularAtDateMinor }: Told): string {
  const moved = regularAtDateMinor / regularMinor - 1
  if (!(Math.abs(moved) >= DRIFT_TOLD)) return ''
  const by = `by about ${Math.round(Math.abs(moved) * 100)} % by then`
  return moved > 0
    ? `The shelf price is expected to rise ${by}: that is why a longer wait can come out dearer.`
    : `The shelf price is expected to fall ${by}.`
}
