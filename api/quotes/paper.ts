import type { RevisionDocument } from '../../core/quote/revision.ts'
import type { Ctx } from '../context.ts'
import { siteOf } from '../http/site.ts'

/** What a quote's PDF is made of; `renderQuotePdf` of api/pdf takes it. */
export interface QuotePaper {
  document: RevisionDocument
  /** Null: erased. */
  customerName: string | null
  paper: 'a4' | 'letter'
  links: { quote: string; setup: string; thisComputerOnly: boolean } | null
  draft: boolean
}
/** `by` names the link it is asked through, `signal` tells when its reader has gone. */
export type RenderQuote = (paper: QuotePaper, asking?: { by?: string | undefined; signal?: AbortSignal }) => Promise<Uint8Array>

/** Links as paper shows them: on this computer's own address they are marked as such. */
export function paperLinks(c: Ctx, links: { quote: string; setup: string } | null): QuotePaper['links'] {
  return links === null ? null : { ...links, thisComputerOnly: siteOf(c).loopback }
}

/** The PDF as a download under a name of our own making. `by` is the link's quote where nobody is signed in. */
export async function sendPdf(c: Ctx, name: string, paper: QuotePaper, by?: string) {
  const bytes = await c.get('deps').pdf(paper, { by, signal: c.req.raw.signal })
  c.header('Content-Type', 'application/pdf')
  c.header('Content-Disposition', `attachment; filename="${name}.pdf"`)
  return c.body(new Uint8Array(bytes), 200)
}
