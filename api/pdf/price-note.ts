import { sayDate, yearOf } from '../../core/dates.ts'
import { salesEndingBefore, saySalesEnding, sayUntil, type SalesEnding } from '../../core/pricing/sales-ending.ts'
import { moneyNotes } from '../../core/quote/money-notes.ts'
import type { AssembledBuild, RevisionDocument } from '../../core/quote/revision.ts'
import type { Teller } from './teller.ts'

/** A build with sale prices that are over before the quote is: whoever waits to its last day pays more. */
interface Ending {
  build: AssembledBuild
  ending: SalesEnding
}

/**
 * How long the prices of page one hold. A club sells nothing: its prices are what members saw. A store answers for its own, save for the sales
 * that end before the quote does.
 *
 * @example priceNote(document, teller) // 'Prices of Oct 20, 2026, held until the day this quote stands.'
 */
export function priceNote(document: RevisionDocument, teller: Teller): string {
  const { inputs, builds, standsUntil } = document
  const endings = builds.flatMap((build): Ending[] => {
    const ending = salesEndingBefore(build.cost.lines, standsUntil)
    return ending === null ? [] : [{ build, ending }]
  })
  const said =
    inputs.install.mode === 'club' ? clubNote(document, endings) : [...moneyNotes(document), storeNote(document, endings, teller)]
  return said.join(' ')
}

function clubNote(document: RevisionDocument, endings: readonly Ending[]): string[] {
  const { builds, inputs, issuedOn } = document
  const ends = endings.map(({ build, ending }) => {
    const said = saySalesEnding(ending, yearOf(issuedOn))
    return builds.length === 1 ? said : `In ${build.letter}, ${said.charAt(0).toLowerCase()}${said.slice(1)}`
  })
  const seen = `Every price is as seen on the date beside it in the lines that follow, not an offer by the store; reckoned for ${sayDate(inputs.asOf)}.`
  const dated = builds.find(({ byDate }) => byDate && byDate.waits > 0)?.byDate
  const expected = dated ? [`By ${sayDate(dated.until, yearOf(issuedOn))}: where waiting pays, with the range of 8 in 10 outcomes.`] : []
  return [...ends, ...moneyNotes(document), ...expected, seen]
}

function storeNote({ builds, inputs, issuedOn }: RevisionDocument, endings: readonly Ending[], teller: Teller): string {
  const held = `Prices of ${sayDate(inputs.asOf)}, held until the day this quote stands`
  if (endings.length === 0) return `${held}.`
  const of = ({ letter }: AssembledBuild): string => (builds.length === 1 ? '' : ` in ${letter}`)
  const ends = endings.map(
    ({ build, ending }) =>
      `${ending.count} ${ending.count === 1 ? 'part' : 'parts'}${of(build)} until ${sayUntil(ending, yearOf(issuedOn))}`,
  )
  const known = endings.some(({ build }) => build.cost.full.complete)
  const totals = known ? endings.map(({ build }) => `${mostWords(build, teller)}${of(build)}`).join(', ') : 'not known'
  return `${held}, except sale prices that end before: ${ends.join(', ')}. Those parts then cost their full price, and the total is ${totals}.`
}

/**
 * What a build may come to after its sales. All at full price and without a discount is the most: what else is below it may stay, and delivery
 * does not grow with the goods.
 */
const mostWords = ({ cost }: AssembledBuild, teller: Teller): string =>
  cost.full.complete ? `at most ${teller.money(cost.full.totalMinor)}` : 'not known'
