import { fileURLToPath } from 'node:url'
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler'
import { paperFonts } from './fonts.ts'
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
  const folder = fileURLToPath(new URL('.', import.meta.url))
  const compiler = NodeCompiler.create({ workspace: folder, fontArgs: [{ fontBlobs: fonts }] })
  return {
    compile: (input) => {
      const { paper, art } = quotePaper(input)
      const inputs = { paper: JSON.stringify(printableTree(paper, covered)), art: JSON.stringify(art) }
      return compiler.pdf({ mainFilePath: `${folder}quote.typ`, inputs }, { pdfStandard: 'ua-1' })
    },
    tidy: () => compiler.evictCache(KEPT_DOCUMENTS),
  }
}
