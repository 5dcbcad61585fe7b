import { sayDate, sayWeekday, yearOf, type CivilDate } from '../../dates.ts'
import { sayMoney } from '../../money.ts'
import type { LineOutlook } from './line-outlook.ts'

export interface AdviceWords {
  /** "Wait", "Buy now", "No hurry until Sun, Nov 29", "Buy when convenient" */
  title: string
  /** One or two sentences with what they rest on. */
  words: string
}

/** Whose words, in which money, by when. */
export interface AdviceReader {
  currency: string
  asOf: CivilDate
  until: CivilDate
  /** Whether the customer put a price on waiting: without one only the date ends it, and that is said. */
  waitingCosts: boolean
}

type Told = Omit<LineOutlook, 'priceToBuyAt'>

/** The advice of a line in words a beginner acts on. Amounts are for the whole line, with tax and delivery. */
export function sayAdvice(line: Told, reader: AdviceReader): AdviceWords {
  const money: Money = (minor) => sayMoney(minor, reader.currency)
  const until = sayDate(reader.until, yearOf(reader.asOf))
  if (Number.isNaN(line.payTodayMinor))
    return { title: 'No price known', words: 'Nobody has reported a price at these stores within 180 days. Look it up first.' }
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
      return { title: 'Wait', words: sayWait(line, money, until, reader) }
  }
}

type Money = (minor: number) => string

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

const sayConvenient = ({ basis }: Told, until: string): string =>
  basis === 'too_little'
    ? 'Too little is recorded here to say whether a sale will come.'
    : `Waiting until ${until} is not expected to save enough to be worth it.`

function sayWait(line: Told, money: Money, until: string, { waitingCosts }: AdviceReader): string {
  const chance = line.likely
    ? `About ${line.likely.many} in ${line.likely.of} to pay ${money(line.likely.paidMinor)} or less by ${until}`
    : `On average ${money(line.expectedPaidMinor)} is paid by ${until}`
  const rests = line.basis === 'kind' ? ' This rests on products of its kind.' : ''
  const free = waitingCosts ? '' : ' Waiting is taken to cost nothing.'
  return `${chance}; buy at ${money(line.priceToBuyAtMinor)} or under.${rests}${free}`
}
