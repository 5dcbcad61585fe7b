import { fileURLToPath } from 'node:url'
import { NodeCompiler, type NodeTypstDocument } from '@myriaddreamin/typst-ts-node-compiler'
import { waysToLayOut } from './fit-page-one.ts'
import { paperFaces, paperFonts } from './fonts.ts'
import { coveredByAll } from './glyph-coverage.ts'
import { printableTree } from './printable.ts'
import { quotePaper, type QuotePdfInput } from './quote-paper.ts'

/** What a document and the one before it used stays in the compiler's memory; anything older goes, or it grows by 11 MB a document. */
const KEPT_DOCUMENTS = 2

export interface PaperCompiler {
  compile: (input: QuotePdfInput) => Uint8Array
  /** Lets go of what older documents left in memory. Call it after each document, once its reader has it. */
  tidy: () => void
}

/** A compiler with our fonts, and nothing it may read but the templates of this folder. Keep one for a thread's life. */
export function createPaperCompiler(): PaperCompiler {
  const fonts = paperFonts()
  const covered = coveredByAll(fonts)
  const faces = paperFaces()
  const folder = fileURLToPath(new URL('.', import.meta.url))
  const compiler = NodeCompiler.create({ workspace: folder, fontArgs: [{ fontBlobs: fonts }] })

  /** The pages, laid out closer until page one holds what belongs to it. */
  function pagesOf(input: QuotePdfInput): NodeTypstDocument {
    const made = quotePaper(input)
    const paper = printableTree(made.paper, covered)
    const art = JSON.stringify(made.art)
    let pages: NodeTypstDocument | null = null
    for (const way of waysToLayOut(paper, made.art, faces)) {
      const compiled = compiler.compile({
        mainFilePath: `${folder}quote.typ`,
        inputs: { paper: JSON.stringify({ ...paper, ...way }), art },
      })
      pages = compiled.result
      if (pages === null) throw new Error(`The template was refused: ${JSON.stringify(compiled.takeDiagnostics()?.shortDiagnostics ?? [])}`)
      if (endOfPageOne(compiler, pages) === 1) break
    }
    if (pages === null) throw new Error('There was no way to lay page one out')
    return pages
  }

  return {
    compile: (input) => compiler.pdf(pagesOf(input), { pdfStandard: 'ua-1' }),
    tidy: () => compiler.evictCache(KEPT_DOCUMENTS),
  }
}

/** The page on which the template's mark at the end of page one came to lie. */
function endOfPageOne(compiler: NodeCompiler, pages: NodeTypstDocument): number {
  const [page] = compiler.query(pages, { selector: '<page-one-ends>', field: 'value' }) as number[]
  return page ?? 1
}
