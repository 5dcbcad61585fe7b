import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'

/** Budgets in bytes after gzip: what a phone in a store aisle loads before it can post, and what one more screen may cost it. */
const SHELL_BUDGET = 180_000
const PART_BUDGET = 90_000

const dist = resolve(import.meta.dirname, '../../web/dist')
const built = existsSync(join(dist, 'index.html'))
const sizeOf = (file: string): number => gzipSync(readFileSync(file)).length

/** Scripts and styles that the document itself names, preloads included: the shell. */
function shellFiles(): string[] {
  const html = readFileSync(join(dist, 'index.html'), 'utf8')
  return [...html.matchAll(/(?:src|href)="\/(assets\/[^"]+\.(?:js|css))"/g)].flatMap(([, name]) => (name === undefined ? [] : [name]))
}

describe.skipIf(!built)('what a browser loads', () => {
  it('is a shell of at most 180 kB', () => {
    const files = shellFiles()
    expect(files.length).toBeGreaterThan(0)
    expect(files.reduce((sum, name) => sum + sizeOf(join(dist, name)), 0)).toBeLessThanOrEqual(SHELL_BUDGET)
  })
  it('is lazy parts of at most 90 kB each', () => {
    const shell = new Set(shellFiles())
    const parts = readdirSync(join(dist, 'assets')).map((name) => `assets/${name}`).filter((name) => /\.(js|css)$/.test(name) && !shell.has(name)) // prettier-ignore
    expect(parts.length).toBeGreaterThan(10)
    expect(parts.filter((name) => sizeOf(join(dist, name)) > PART_BUDGET)).toEqual([])
  })
  it('has no script or style inside the document', () => {
    const html = readFileSync(join(dist, 'index.html'), 'utf8')
    expect(html).not.toMatch(/<script(?![^>]*\bsrc=)|<style|\sstyle=|\son\w+=/i)
  })
})
