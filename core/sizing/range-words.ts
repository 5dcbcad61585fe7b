import type { ReaderUnits } from '../units/quantity.ts'
import { sayPhrase, sayQuantity } from '../units/say.ts'
import { VERDICT_WORDS, type Finding } from './finding.ts'
import { CHECK_TITLES } from './check-titles.ts'
import { isNarrow } from './narrow.ts'
import type { OpenQuestion } from './report.ts'

type Range = NonNullable<Finding['range']>

/** A range with its unit told once. */
function sayEnds({ low, high }: Range, reader: ReaderUnits): string {
  const [from, to] = [sayQuantity(low, reader), sayQuantity(high, reader)]
  const unit = /[^\d.,()\u2212\u00a0]+$/.exec(to)?.[0] ?? ''
  return `${unit !== '' && from.endsWith(unit) ? from.slice(0, -unit.length).trimEnd() : from} to ${to}`
}

/**
 * What a value and its limit may come to over everything that is assumed, and the worst that comes of all together where no single answer does it; empty where
 * nothing varies by more than the last digit.
 *
 * @example sayRange(finding, METRIC) // 'Over all that is assumed: 31.2 to 34.3 °C. All at their worst: does not fit.'
 */
export function sayRange({ range, limitRange, worst, turns = [] }: Finding, reader: ReaderUnits): string {
  const value = range && !isNarrow(range.low, range.high) ? sayEnds(range, reader) : ''
  const limit =
    limitRange && !isNarrow(limitRange.low, limitRange.high)
      ? `${value === '' ? 'a' : ', against a'} limit of ${sayEnds(limitRange, reader)}`
      : ''
  const all = value + limit === '' ? '' : `Over all that is assumed: ${value}${limit}.`
  const together = worst !== undefined && !turns.some(({ verdict }) => verdict === worst)
  return [all, together ? `All at their worst: ${VERDICT_WORDS[worst]}.` : ''].filter((text) => text !== '').join(' ')
}

/**
 * The single answers that would change a verdict, worst first, those to one question together.
 *
 * @example sayTurns(finding, METRIC) // ['warmest room temperature (33 °C: does not fit)']
 */
export function sayTurns({ turns = [] }: Finding, reader: ReaderUnits): string[] {
  const inputs = [...new Set(turns.map(({ input }) => input))]
  return inputs.map((input) => {
    const answers = turns.filter((turn) => turn.input === input)
    const said = answers.map(({ at, verdict, wording }) => `${sayPhrase(at, reader)}: ${wording ?? VERDICT_WORDS[verdict]}`)
    return `${input} (${said.join('; ')})`
  })
}

/**
 * The worst verdict over all that is assumed and which single answer turns it, in one line; empty where none is worse.
 *
 * @example sayWorst(finding, METRIC) // 'All at their worst: does not fit (warmest room temperature 33 °C)'
 */
export function sayWorst({ worst, turns = [] }: Finding, reader: ReaderUnits): string {
  if (worst === undefined) return ''
  const turn = turns.find(({ verdict }) => verdict === worst)
  return `All at their worst: ${VERDICT_WORDS[worst]}${turn ? ` (${turn.input} ${sayPhrase(turn.at, reader)})` : ''}`
}

/** Checks a question's answer bears on, by title: the first two, and how many more. @example sayBearsOn(question) // 'Heater stuck on, The warmest room' */
export function sayBearsOn({ checks }: Pick<OpenQuestion, 'checks'>): string {
  const titles = checks.map((check) => CHECK_TITLES[check])
  const rest = titles.length - MOST_TITLES
  return rest > 0 ? `${titles.slice(0, MOST_TITLES).join(', ')} and ${rest} more` : titles.join(', ')
}
const MOST_TITLES = 2
