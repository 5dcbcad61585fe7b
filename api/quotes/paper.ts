import type { CivilDate } from '../../core/dates.ts'
import type { BuildLetter } from '../../core/quote/draft.ts'
import type { QuoteAnswer } from '../../core/quote/quote-view.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import { signedIn, type Ctx } from '../context.ts'
import { siteOf } from '../http/site.ts'

/** What a quote's PDF is made of; `renderQuotePdf` of api/pdf takes it. */
export interface QuotePaper {
  document: RevisionDocument
  /** Null: erased. */
  customerName: string | null
  /** The day on which the name was erased, where it was. */
  erasedOn?: CivilDate | null
  paper: 'a4' | 'letter'
  links: { quote: string; setup: string; thisComputerOnly: boolean } | null
  draft: boolean
  /** The build that was accepted: the paper's details and checklist are of it. */
  letter?: BuildLetter
}
/** `by` names who asks, `alone` where that is a link, `signal` tells when its reader has gone. */
export type RenderQuote = (paper: QuotePaper, asking?: { by?: string; alone?: boolean; signal?: AbortSignal }) => Promise<Uint8Array>

/** The build that the customer accepted of this version, for its paper. @example acceptedBuild(answer, 2) // { letter: 'B' } */
export function acceptedBuild(answer: QuoteAnswer | null, revision: number): Pick<QuotePaper, 'letter'> {
  if (answer === null || answer.answer !== 'accepted' || answer.letter === null || answer.revision !== revision) return {}
  return { letter: answer.letter }
}

/** Links as paper shows them: on this computer's own address they are marked as such. */
export function paperLinks(c: Ctx, links: { quote: string; setup: string } | null): QuotePaper['links'] {
  return links === null ? null : { ...links, thisComputerOnly: siteOf(c).loopback }
}

/** The PDF as a download under a name of our own making, its paper in it, so that the two sizes do not take each other's place. `linked` is the link's quote where nobody is signed in. */
export async function sendPdf(c: Ctx, name: string, paper: QuotePaper, linked?: string) {
  const { signal } = c.req.raw
  const asking = linked === undefined ? { by: signedIn(c).id, signal } : { by: linked, alone: true, signal }
  const bytes = await c.get('deps').pdf(paper, asking)
  c.header('Content-Type', 'application/pdf')
  c.header('Content-Disposition', `attachment; filename="${name}-${paper.paper}.pdf"`)
  return c.body(new Uint8Array(bytes), 200)
}
