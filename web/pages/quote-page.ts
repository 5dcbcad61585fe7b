import { sayDate, sayWeekday, yearOf, type CivilDate } from '../../core/dates.ts'
import type { QuoteState } from '../../core/quote/draft.ts'
import type { QuoteAnswer } from '../../core/quote/quote-view.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import { moneyNotes, termsNote } from '../../core/quote/money-notes.ts'
import { sayMoney } from '../../core/money.ts'
import { staffBuildOf, staffPlot } from '../plots/staff.ts'
import { apart } from './apart.ts'
import { contactLine } from './contact.ts'
import { drawing, markup, type Markup } from './markup.ts'
import { pageDocument } from './page-document.ts'
import { formFaults, type PageFault } from './page-fault.ts'
import { answerForms } from './quote-answer.ts'
import { adviceSection, comparedTotals } from './quote-advice.ts'
import { buildsSideBySide, salesEnd } from './quote-builds.ts'
import { sinceSection } from './quote-since.ts'
import { standing } from './quote-standing.ts'

export interface QuotePageProps {
  document: RevisionDocument
  /** Null once the customer's data was erased. */
  customerName: string | null
  /** The day on which it was erased, where it was. */
  erasedOn?: CivilDate | null
  state: QuoteState
  /** Newest version's number where this one is older. */
  supersededBy: number | null
  answer: QuoteAnswer | null
  /** The civil day in the install's zone. */
  today: CivilDate
  /** "/q/<token>". */
  path: string
  /** Where the setup page of this quote is; null where links are off. */
  setupPath: string | null
  faults: PageFault[]
  /** What was posted and refused, kept in the fields. */
  typed: { letter?: string; note?: string; answer?: string }
}

/** The quote as the customer decides on it. */
export function quotePage(props: QuotePageProps): Markup {
  const { document: quote } = props
  const open = props.state === 'issued' && props.supersededBy === null && props.today <= quote.standsUntil
  return pageDocument({
    title: `Quote ${quote.number}, version ${quote.revision}`,
    className: 'quote',
    heading: quote.inputs.install.name,
    main: markup`${intro(props)}
${standing(props)}
${sinceSection(quote)}
${
  open
    ? ''
    : formFaults(
        props.faults,
        props.faults.map((fault) => fault.field),
      )
}
${comparison(quote, open)}
${buildsSideBySide(quote, props.path)}
${adviceSection(quote)}
${terms(quote)}
${scope(quote)}
${open ? answerForms(props) : ''}
${ending(props)}`,
  })
}

function intro({ document: quote, customerName, erasedOn, today, path }: QuotePageProps): Markup {
  const year = yearOf(today)
  return markup`<div class="intro"><div><p class="label">Quote ${quote.number}, version ${quote.revision}${customerName === null ? (erasedOn ? `; the name was erased on ${sayDate(erasedOn, year)}` : '') : markup`, for ${apart(customerName)}`}</p>
<h1>${quote.title}</h1>
${quote.note === '' ? '' : markup`<p class="lead">${quote.note}</p>`}</div>
<dl class="facts"><div><dt>Stands until</dt><dd><b>${sayWeekday(quote.standsUntil, year)}</b>${quote.builds.some((build) => salesEnd(build, quote) !== '') ? markup` <span class="note">some sale prices end sooner: see each build</span>` : ''}</dd></div>
<div><dt>Your advisor</dt><dd>${apart(quote.advisor)}</dd></div>
<div><dt>Issued</dt><dd>${sayDate(quote.issuedOn, year)}</dd></div>
<div><dt>On paper</dt><dd><a href="${path}/pdf?paper=a4">PDF, A4</a> <a href="${path}/pdf?paper=letter">PDF, Letter</a></dd></div></dl></div>`
}

/** The totals first, and where each build and the answer stand on the page; then all builds on one scale. */
function comparison(quote: RevisionDocument, open: boolean): Markup {
  const { budgetMinor } = quote.need
  const { currency } = quote.inputs.install
  const svg = staffPlot(quote.builds.map(staffBuildOf), budgetMinor, { id: 'staff', currency })
  const rows = quote.builds.map(({ letter, name, cost }) => {
    const total = cost.today.complete ? sayMoney(cost.today.totalMinor, currency) : 'no total yet'
    return markup`<li><a href="#build-${letter}"><span>${letter}: ${apart(name)}</span> <b>${total}</b></a></li>`
  })
  const scale =
    svg === ''
      ? ''
      : markup`<div>${drawing(svg)}<p class="note">Each line runs from the best price seen to the full price; the pointer is today.${quote.builds.some(({ byDate }) => byDate && byDate.waits > 0) ? ' The band holds 8 of 10 outcomes by the date.' : ''}${budgetMinor === null ? '' : ' The dashes are your budget.'}</p></div>`
  return markup`<section class="compare" aria-labelledby="h-compare"><h2 id="h-compare">Today’s totals</h2>
<ul class="sums-list">${rows}${open ? markup`<li><a href="#answer">Accept or decline</a></li>` : ''}</ul>${scale}${comparedTotals(quote)}</section>`
}

/** What stands beside the figures: discount, deposit, rates of exchange, and where the prices come from. */
function terms(quote: RevisionDocument): Markup {
  const notes = [...moneyNotes(quote), seenNote(quote), termsNote(quote.builds.flatMap(({ cost }) => cost.lines))].filter(
    (note) => note !== '',
  )
  return markup`<section class="terms" aria-labelledby="h-terms"><h2 id="h-terms">About the prices</h2><ul class="plain">${notes.map((note) => markup`<li>${note}</li>`)}</ul></section>`
}

/** A club sells nothing: its prices are what members saw. A store answers for its own. */
function seenNote({ inputs: { install, asOf }, issuedOn }: RevisionDocument): string {
  const day = sayDate(asOf, yearOf(issuedOn))
  return install.mode === 'club'
    ? `Prices are of ${day}, as members saw them, not an offer by the stores: each is as seen on the date beside it.`
    : `Prices are of ${day}.`
}

function scope(quote: RevisionDocument): Markup {
  const list = (id: string, heading: string, items: readonly string[]): Markup | '' =>
    items.length === 0
      ? ''
      : markup`<section aria-labelledby="${id}"><h2 id="${id}">${heading}</h2><ul class="plain">${items.map((item) => markup`<li>${item}</li>`)}</ul></section>`
  return markup`<div class="scope">${list('h-in', 'Included', quote.included)}${list('h-out', 'Not included', quote.notIncluded)}</div>`
}

function ending({ document: quote }: QuotePageProps): Markup {
  const { install } = quote.inputs
  return markup`<section class="cautions" aria-labelledby="h-care"><h2 id="h-care">Take care</h2><ul class="plain">${quote.cautions.map((caution) => markup`<li>${caution}</li>`)}</ul>
<p class="note">A floor finding is a screening only, never an approval.</p>
<p class="ask">${contactLine(install.contact)}</p></section>`
}
