import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'

/** What a PDF says, as a reader of its own makes it out: `pdftotext` where the machine has it, else pdfjs. White space is one blank. */
export async function pdfText(path: string): Promise<string> {
  const tool = spawnSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' })
  const text = tool.status === 0 ? tool.stdout : await pdfjsText(path)
  return text.replace(/\s+/g, ' ')
}

async function pdfjsText(path: string): Promise<string> {
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs')
  const document = await getDocument({ data: new Uint8Array(readFileSync(path)) }).promise
  const pages: string[] = []
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number)
    const { items } = await page.getTextContent()
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join(' '))
  }
  return pages.join(' ')
}
