import { readFile, writeFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { format } from 'prettier'
import { rulesOfThumb } from './rules-of-thumb.ts'

// Writes the generated documents anew; with --check says whether one would differ and writes nothing.
const path = fileURLToPath(new URL('../../docs/rules-of-thumb.md', import.meta.url))
const text = await format(rulesOfThumb(), { parser: 'markdown', printWidth: 160 })

if (process.argv.includes('--check')) {
  const same = (await readFile(path, 'utf8').catch(() => '')) === text
  if (!same) console.error('docs/rules-of-thumb.md differs from what the engine says. Run: npm run generate')
  process.exitCode = same ? 0 : 1
} else {
  await writeFile(path, text)
}
