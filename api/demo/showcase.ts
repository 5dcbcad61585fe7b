import { existsSync } from 'node:fs'
import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Connection } from '../../db/connect.ts'
import { findLinkedQuote } from '../../db/revisions.ts'
import { linkToken } from '../auth/tokens.ts'
import type { RenderQuote } from '../quotes/paper.ts'
import type { Service } from '../service/service.ts'

const noteIn = (folder: string): string => join(folder, 'showcase.json')

/** Remembers which quote shows the job done, so that a first run that was broken off is made up for by the next. */
export const noteShowcase = (folder: string, quoteId: string): Promise<void> => writeFile(noteIn(folder), JSON.stringify({ quoteId }))

/** The showcased quote as a PDF beside the database, made once. Its path; undefined where there is no such quote any more. */
export async function showcasePdf(
  folder: string,
  { db }: Connection,
  { address, linkKey }: Service,
  render: RenderQuote,
): Promise<string | undefined> {
  const note = await readFile(noteIn(folder), 'utf8').catch(() => undefined)
  if (note === undefined) return undefined
  const { quoteId } = JSON.parse(note) as { quoteId: string }
  const quote = await findLinkedQuote(db, quoteId)
  if (quote === undefined || quote.setup === null) return undefined
  const path = join(folder, `quote-${quote.number}.pdf`)
  if (existsSync(path)) return path
  const links = {
    quote: `${address}/q/${linkToken(linkKey, 'quote', quote.id, quote.linkVersion)}`,
    setup: `${address}/s/${linkToken(linkKey, 'setup', quote.setup.id, quote.setup.linkVersion)}`,
    thisComputerOnly: true,
  }
  const { document, customerName } = quote
  await writeFile(path, await render({ document, customerName, paper: document.inputs.install.paper, links, draft: false }))
  return path
}
