import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { getDocument, VerbosityLevel } from 'pdfjs-dist/legacy/build/pdf.mjs'

/** A PDF as a reader that is not ours sees it. */
export interface ReadPdf {
  pages: string[]
  text: string
  sizes: Array<{ width: number; height: number }>
  /** Roles of the structure tree, all pages. */
  roles: string[]
  /** Alternative texts of pictures. */
  alts: string[]
  /** Families and styles of the fonts inside, without their subset tags. */
  fonts: string[]
  title: string
  language: string
}

interface Node {
  role?: string
  alt?: string
  children?: Node[]
}

/** Opens the bytes with pdf.js. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const document = await getDocument({ data: bytes.slice(), verbosity: VerbosityLevel.ERRORS, useSystemFonts: false }).promise
  const read: ReadPdf = { pages: [], text: '', sizes: [], roles: [], alts: [], fonts: fontsOf(bytes), title: '', language: '' }
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number)
    const content = await page.getTextContent()
    const words = content.items.map((item) => ('str' in item ? `${item.str}${item.hasEOL ? '\n' : ''}` : '')).join('')
    read.pages.push(words.replace(/\s+/g, ' '))
    const { width, height } = page.getViewport({ scale: 1 })
    read.sizes.push({ width: Math.round(width), height: Math.round(height) })
    collect((await page.getStructTree()) as Node | null, read)
  }
  const { info } = (await document.getMetadata()) as { info: { Title?: string; Language?: string } }
  read.title = info.Title ?? ''
  read.language = info.Language ?? ''
  read.text = read.pages.join(' ')
  await document.destroy()
  return read
}

function collect(node: Node | null, into: ReadPdf): void {
  if (node === null) return
  if (node.role !== undefined) into.roles.push(node.role)
  if (node.alt !== undefined) into.alts.push(node.alt)
  for (const child of node.children ?? []) collect(child, into)
}

/** Names of all font descriptors; the objects around the streams are not compressed. */
function fontsOf(bytes: Uint8Array): string[] {
  const raw = Buffer.from(bytes).toString('latin1')
  return [...new Set([...raw.matchAll(/\/FontName\s*\/(?:[A-Z]{6}\+)?([\w-]+)/g)].map((match) => match[1] ?? ''))].sort()
}

/** Whether a command is on this machine. */
export function hasCommand(command: string): boolean {
  try {
    execFileSync('which', [command], { stdio: 'ignore' })
    return true
  } catch {
    return false
  }
}

/** Runs a command on the bytes as a file and gives back what it prints; throws where it fails. */
export function runOnPdf(command: string, options: string[], bytes: Uint8Array): string {
  const folder = mkdtempSync(join(tmpdir(), 'quote-pdf-'))
  try {
    const file = join(folder, 'quote.pdf')
    writeFileSync(file, bytes)
    return execFileSync(command, [...options, file], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] })
  } finally {
    rmSync(folder, { recursive: true })
  }
}
