import { shapeWords } from '../../core/catalog/tank-shape.ts'
import { commonSize } from '../../core/catalog/common-sizes.ts'
import { sayDate, sayWeekday, yearOf, type CivilDate } from '../../core/dates.ts'
import { documentUnits } from '../../core/quote/document-units.ts'
import type { AssembledBuild, RevisionDocument } from '../../core/quote/revision.ts'
import { quantity, stated } from '../../core/units/quantity.ts'
import { saySize } from '../../core/units/say.ts'
import { sayCounts } from '../../core/sizing/count-words.ts'
import { firstFindings, firstQuestions } from './findings-on-paper.ts'
import { includedRows, isSale } from './included-on-paper.ts'
import type { FirstPage, LinkPaper } from './paper.ts'
import { priceNote } from './price-note.ts'
import type { Teller } from './teller.ts'
import { sumRows, tierRows } from './tiers-on-paper.ts'

/** Always on page one, in these words. */
const CAUTION =
  'Water, glass, mains electricity, floors and heavy lifting can hurt. The makers’ instructions, the local electrical and building code, a licensed electrician and a structural engineer come before this sheet. A floor finding is a screening, never an approval.'

/** Whom it is for, or since when nobody is told. */
export function customerWords(asked: { customerName: string | null; erasedOn?: CivilDate | null }, teller: Teller): string {
  if (asked.customerName !== null) return `For ${asked.customerName}`
  return asked.erasedOn ? `The customer’s name was erased on ${teller.date(asked.erasedOn)}` : 'The customer’s name was erased'
}

/** What a customer decides on; `customer` says whom it is for. */
export function firstPage(document: RevisionDocument, customer: string, link: LinkPaper | null, teller: Teller): FirstPage {
  const { builds, inputs, suggestion } = document
  const suggested = builds.find((build) => build.suggested)
  return {
    title: document.title.trim() === '' ? 'Quote for an aquarium' : document.title,
    customer,
    need: needSentence(document, teller),
    since: document.since ? `Since ${document.since.version}: ${document.since.inShort}` : '',
    facts: factsOf(document, teller),
    builds: builds.map((build) => buildHead(build, document, teller)),
    suggestion: suggested && suggestion ? { letter: suggested.letter, name: suggested.name, reason: suggestion.reason } : null,
    tiers: tierRows(builds, teller, inputs.install.mode),
    sizing: builds.map(({ report }) => sayCounts(report)),
    priceHeading: `What is included, at today’s price in ${inputs.install.currency}`,
    anySale: builds.some((build) => build.cost.lines.some(isSale)),
    included: includedRows(builds, teller),
    sums: sumRows(builds, teller),
    findings: firstFindings(builds, teller),
    questions: firstQuestions(builds),
    notIncluded: `${document.notIncluded.join('; ')}.`,
    priceNote: priceNote(document, teller),
    note: document.note,
    caution: CAUTION,
    link,
  }
}

function buildHead(build: AssembledBuild, { inputs }: RevisionDocument, teller: Teller): FirstPage['builds'][number] {
  const { drawing, report } = build
  const water = report.figures.waterVolumeL
  const size =
    drawing === null ? 'no tank chosen yet' : saySize([drawing.lengthMm, drawing.widthMm, drawing.heightMm], documentUnits(inputs))
  return {
    letter: build.letter,
    name: build.name,
    size: [
      size,
      build.rows.some((row) => row.answer === 'kit') ? 'kit' : '',
      shapeWords(drawing?.plan?.form),
      drawing?.style ?? '',
      water === undefined ? '' : `${teller.quantity(quantity(water, 'L', 1))} of water`,
    ]
      .filter((text) => text !== '')
      .join(', '),
    why: build.why,
    suggested: build.suggested,
    drawn: drawing !== null,
    alt: `Build ${build.letter}, front and ${drawing?.plan ? 'from above' : 'side'}, all builds to one scale: ${size}`,
  }
}

/** "About 48 in long, living room, small tropical fish, about $1,150, by Nov 14, 2026." */
function needSentence({ need, conditions, issuedOn }: RevisionDocument, teller: Teller): string {
  const parts = [
    askedSize(need, teller),
    need.place,
    need.livestockNote === '' ? lowerFirst(conditions.livestock.name) : need.livestockNote,
    `room ${teller.quantity(stated(conditions.coldestRoomC, 'degC', 1))} to ${teller.quantity(stated(conditions.warmestRoomC, 'degC', 1))}${conditions.assumed.includes('coldestRoomC') ? ' (assumed)' : ''}`,
    need.budgetMinor === null ? '' : `about ${teller.money(need.budgetMinor).replace(/\.0+$/, '')}`,
    need.byDate === null ? '' : `by ${sayDate(need.byDate, yearOf(issuedOn))}`,
  ]
  return `Asked for: ${parts.filter((part) => part.trim() !== '').join('; ')}.`
}

/** A common size by the name it was asked by. */
function askedSize({ lengthMm, commonSizeId }: RevisionDocument['need'], teller: Teller): string {
  const size = commonSizeId === null ? undefined : commonSize(commonSizeId)
  if (size) return `a ${size.label} tank`
  return lengthMm === null ? '' : `about ${teller.quantity(stated(lengthMm, 'mm', 0))} long`
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1)

function factsOf({ standsUntil, advisor, builds, inputs }: RevisionDocument, teller: Teller): FirstPage['facts'] {
  const stores = [...new Set(builds.flatMap((build) => build.cost.receipts.map((receipt) => teller.storeName(receipt.storeId))))]
  return [
    { label: 'Stands until', value: sayWeekday(standsUntil), strong: true },
    { label: 'Your advisor', value: advisor, strong: false },
    { label: stores.length === 1 ? 'Store' : 'Stores', value: stores.join(', '), strong: false },
    { label: 'To ask', value: inputs.install.contact, strong: false },
  ].filter((fact) => fact.value.trim() !== '')
}
