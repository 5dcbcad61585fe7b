import { sayDate, type CivilDate } from '../../core/dates.ts'
import type { BuildLetter } from '../../core/quote/draft.ts'
import type { AssembledBuild, RevisionDocument } from '../../core/quote/revision.ts'
import { CAUTIONS, cautionTitle } from '../../core/startup/cautions.ts'
import { readerFirst } from '../../core/startup/reader-first.ts'
import { adviceOnPaper } from './advice-on-paper.ts'
import { artOf, type Art } from './art.ts'
import { buildOnPaper } from './build-on-paper.ts'
import { drawingsOnPaper } from './drawings-on-paper.ts'
import { customerWords, firstPage } from './first-page.ts'
import type { CautionPaper, LinkPaper, Paper, PlanPaper } from './paper.ts'
import { planOnPaper } from './plan-on-paper.ts'
import { reckonedOnPaper } from './reckoned-on-paper.ts'
import { runningCosts } from './running-on-paper.ts'
import { tellerOf, type Teller } from './teller.ts'

export interface QuotePdfLinks {
  quote: string
  setup: string
  /** True on plain http at localhost: printed, and said. */
  thisComputerOnly: boolean
}

export interface QuotePdfInput {
  document: RevisionDocument
  /** Null once the customer's data was erased. */
  customerName: string | null
  /** The day on which the name was erased, where it was. */
  erasedOn?: CivilDate | null
  paper: 'a4' | 'letter'
  /** Null where links are off: no code and no address is printed. */
  links: QuotePdfLinks | null
  draft: boolean
  /** The build that was accepted: told in full and set up. Else the suggested one, else the first. */
  letter?: BuildLetter
}

/** The whole document as the template takes it, with its pictures apart. Pure: the same input gives the same paper. */
export function quotePaper(input: QuotePdfInput): { paper: Paper; art: Art } {
  const { document, links } = input
  const chosen = chosenBuild(document, input.letter)
  const { mode } = document.inputs.install
  const teller = tellerOf(document)
  const names = new Map(document.inputs.products.map((product) => [product.id, product.name]))
  const plan = planOnPaper(chosen, document.inputs.install.contact, linkOf(links, 'setup'), teller)
  const paper: Paper = {
    size: input.paper === 'letter' ? 'us-letter' : 'a4',
    date: dateParts(document),
    docTitle: `Quote ${document.number}, version ${document.revision}, ${document.inputs.install.name}`,
    head: headOf(input),
    first: firstPage(document, customerWords(input, teller), linkOf(links, 'quote'), teller),
    since: document.since && document.since.builds.length > 0 ? { version: document.since.version, builds: document.since.builds } : null,
    detail: buildOnPaper(chosen, names, null, teller, mode),
    others: document.builds.filter((build) => build !== chosen).map((build) => buildOnPaper(build, names, chosen, teller, mode)),
    advice: adviceOnPaper(chosen, document),
    running: runningCosts(document, teller),
    drawings: drawingsOnPaper(chosen, document),
    reckoned: reckonedOnPaper(chosen, document, teller),
    cautions: cautionsOf(document.cautions.length > 0 ? document.cautions : CAUTIONS.map((each) => each.text), plan, teller),
    plan,
  }
  return { paper, art: artOf(document, chosen, links) }
}

function chosenBuild({ builds }: RevisionDocument, letter: BuildLetter | undefined): AssembledBuild {
  const found = builds.find((build) => build.letter === letter) ?? builds.find((build) => build.suggested) ?? builds[0]
  if (found === undefined) throw new RangeError('A quote on paper needs at least one build')
  return found
}

function dateParts({ issuedOn }: RevisionDocument): [number, number, number] {
  const [year = 1, month = 1, day = 1] = issuedOn.split('-').map(Number)
  return [year, month, day]
}

function headOf({ document, draft }: QuotePdfInput): Paper['head'] {
  return {
    club: document.inputs.install.name,
    quote: document.number === '' ? 'Quote' : `Quote ${document.number}`,
    version: draft ? 'draft' : `version ${document.revision}`,
    date: sayDate(document.issuedOn),
    draft,
  }
}

/** Each once, with the step that tells it in full. */
function cautionsOf(texts: readonly string[], { groups }: PlanPaper, { units }: Teller): CautionPaper[] {
  const steps = groups.flatMap((group) => group.steps).filter(({ cautionFirst }) => cautionFirst)
  return texts.map((text) => {
    const title = cautionTitle(text) ?? 'Caution'
    return { title, text: readerFirst(text, units), step: steps.find(({ caution }) => cautionTitle(caution) === title)?.number ?? null }
  })
}

function linkOf(links: QuotePdfLinks | null, which: 'quote' | 'setup'): LinkPaper | null {
  if (links === null) return null
  const what =
    which === 'quote' ? 'Open this quote, say yes to a build, or ask.' : 'The same checklist on a phone, with a log for your readings.'
  return {
    art: `qr-${which}`,
    address: links[which].replace(/^https:\/\//, ''),
    words: links.thisComputerOnly ? `${what} Opens on this computer only.` : what,
  }
}
