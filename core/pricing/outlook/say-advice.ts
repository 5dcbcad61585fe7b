import { sayDate, sayWeekday, yearOf, type CivilDate } from '../../dates.ts'
import { sayMoney } from '../../money.ts'
import { sayBuyAtTag } from '../buy-at-tag.ts'
import type { LineOutlook } from './line-outlook.ts'

export interface AdviceWords {
  /** "Wait: buy at $178.00 or under", at any store "… with tax", "Buy now", "No hurry until Sun, Nov 29", "Buy when convenient": the one price to act on is here or today's. */
  title: string
  /** Why, in one sentence. */
  reason: string
  /** The reason and what else it rests on. */
  words: string
}

/** Whose words, in which money, by when. */
export interface AdviceReader {
  currency: string
  asOf: CivilDate
  until: CivilDate
  /** What the customer holds a week's wait to be worth, minor units; 0: nothing, so that only the date ends it, and that is said. */
  weekWaitMinor: number
  /** Amounts are with tax; a price to buy at is the tag's where the line is bought at one store, else with tax as the rest is. */
  withTax: boolean
}

/** What the record has of a product without a price: the newest used one, where one was reported. */
export interface UsedSeen {
  priceMinor: number
  seenOn: CivilDate
}

/** What is known beside the figures. */
export interface AdviceFacts {
  used?: UsedSeen | undefined
  nextSaleTime?: { name: string; first: CivilDate } | null
  /** Bought wherever it costs least: no one tag is meant, and what is told is what is paid. */
  anyStore?: boolean
}

type Told = Omit<LineOutlook, 'priceToBuyAt'>
type Money = (minor: number) => string
/** Why, and what else is to be said; empty where nothing is. */
type Why = readonly [reason: string, ...more: string[]]

/** The advice of a line in words a beginner acts on. Amounts are for the whole line; a price to buy at is that of one, on its tag or, at any store, with tax. */
export function sayAdvice(line: Told, reader: AdviceReader, facts: AdviceFacts = {}): AdviceWords {
  const money: Money = (minor) => sayMoney(minor, reader.currency)
  const tax = reader.withTax ? ' with tax' : ''
  const until = sayDate(reader.until, yearOf(reader.asOf))
  if (Number.isNaN(line.payTodayMinor)) return told('No price known', sayUnknown(facts.used ?? null, money, reader))
  if (reader.until <= reader.asOf)
    return told('Buy now', ['Today is the day it is to be bought by.', `It costs ${money(line.payTodayMinor)}${tax} today.`])
  switch (line.advice) {
    case 'buy_now':
      return told('Buy now', [sayNow(line, until, reader)])
    case 'no_hurry': {
      const day = line.noHurryUntil === null ? until : sayWeekday(line.noHurryUntil, yearOf(reader.asOf))
      return told(`No hurry until ${day}`, [sayNoHurry(line, reader)])
    }
    case 'buy_when_convenient':
      return told('Buy when convenient', sayConvenient(line, until, reader, facts))
    case 'wait':
      return reader.withTax && facts.anyStore === true
        ? told(`Wait: buy at ${money(eachOf(line))} or under with tax`, sayWait(line, money, until, reader, sayEach(line, reader.currency)))
        : told(`Wait: buy at ${money(line.buyAtTagMinor)} or under`, sayWait(line, money, until, reader))
  }
}

const told = (title: string, [reason, ...more]: Why): AdviceWords => ({
  title,
  reason,
  words: [reason, ...more].filter((sentence) => sentence !== '').join(' '),
})

function sayUnknown(used: UsedSeen | null, money: Money, { asOf, withTax }: AdviceReader): Why {
  if (used === null) return ['Nobody has reported a price at these stores within 180 days.', 'Look it up first.']
  const seen = `${money(used.priceMinor)}${withTax ? ' on the tag' : ''} on ${sayDate(used.seenOn, yearOf(asOf))}`
  return [`Reported only as used, ${seen}.`, 'What a used one costs says little of the next one: nothing is expected of it.']
}

function sayNow({ saleLastDay, basis }: Told, until: string, { asOf }: AdviceReader): string {
  const holds = saleLastDay === asOf ? 'for today only' : 'to a day that is not known'
  const better = basis === 'too_little' ? TOO_LITTLE : `waiting is not expected to find a better price by ${until}.`
  return `It is on sale ${holds}: ${better}`
}

function sayNoHurry({ noHurryUntil, basis }: Told, { until }: AdviceReader): string {
  if (noHurryUntil === until) return 'The sale price holds to that day, by which it is to be bought.'
  return `The sale price holds to that day: ${basis === 'too_little' ? TOO_LITTLE : 'waiting beyond it is not expected to pay.'}`
}

const TOO_LITTLE = 'too little is recorded here to say whether a sale will come after it.'

/** A sale time that comes before the day is named: who knows of it would else ask why it is not waited for. */
function sayConvenient(line: Told, until: string, { asOf, until: day }: AdviceReader, { nextSaleTime }: AdviceFacts): Why {
  const next = nextSaleTime && nextSaleTime.first <= day ? nextSaleTime : null
  const sale = next && `${next.name} ${next.first <= asOf ? 'runs already' : `begins ${sayDate(next.first, yearOf(asOf))}`}`
  if (line.basis === 'too_little')
    return [sale ? `${sale}, but too little is recorded here to say what it brings.` : 'Too little is recorded here to say whether a sale will come.'] // prettier-ignore
  const small = 'is not expected to save enough to be worth it.'
  return [sale ? `${sale}, but waiting for it, or until ${until}, ${small}` : `Waiting until ${until} ${small}`, sayShelf(line)]
}

const eachOf = ({ priceToBuyAtMinor, quantity }: Told): number => Math.floor(priceToBuyAtMinor / quantity)

function sayEach(line: Told, currency: string): string {
  const { quantity, buyAtTagMinor, tagsAgree } = line
  const tag = sayBuyAtTag({ priceToBuyAtMinor: eachOf(line), buyAtTagMinor, tagsAgree }, currency)
  return quantity === 1 ? tag : `The price to buy at is that of one. ${tag}`.trim()
}

/** `asPaid`: what is to be said of the tag, where all amounts are told as they are paid. */
function sayWait(line: Told, money: Money, until: string, { weekWaitMinor, withTax }: AdviceReader, asPaid?: string): Why {
  const rests = line.basis === 'kind' ? 'This rests on products of its kind.' : ''
  const cost =
    weekWaitMinor > 0
      ? `A week’s wait is counted as ${money(weekWaitMinor)}.`
      : 'Waiting is taken to cost nothing, so that only the date ends it.'
  const [told, tag] = asPaid === undefined ? [line, sayTag(line, withTax)] : [{ ...line, likelyTagMinor: null }, asPaid]
  return [sayChanceOf(told, money, until, withTax), tag, sayShelf(line), rests, cost]
}

/** The share that is told is of the same sort as the price to buy at, the tag's, wherever tags say one thing. */
function sayChanceOf(line: Told, money: Money, until: string, withTax: boolean): string {
  const { likely, likelyTagMinor, expectedPaidMinor, payTodayMinor } = line
  if (!likely) return `Waiting until ${until} saves about ${Math.round((1 - expectedPaidMinor / payTodayMinor) * 100)} % on average.`
  const tax = withTax ? ' with tax' : ''
  const share = `About ${likely.many} in ${likely.of}`
  return likelyTagMinor === null
    ? `${share} to pay ${money(likely.paidMinor)} or less${tax} by ${until}.`
    : `${share} to find it at ${money(likelyTagMinor)} or less by ${until}.`
}

function sayTag({ quantity, likely, likelyTagMinor }: Told, withTax: boolean): string {
  if (quantity === 1 && !withTax) return ''
  const of = quantity > 1 ? 'of one on its tag' : 'on the tag'
  return likely && likelyTagMinor !== null ? `Both prices are those ${of}.` : `The price to buy at is that ${of}.`
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
