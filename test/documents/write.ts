import { readFile, writeFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { format } from 'prettier'
import { referenceValues } from './reference-values.ts'
import { rulesOfThumb } from './rules-of-thumb.ts'

// Writes the generated documents anew; with --check says whether one would differ and writes nothing.
const DOCUMENTS = { 'docs/rules-of-thumb.md': rulesOfThumb, 'docs/reference-values.md': referenceValues }
const isCheck = process.argv.includes('--check')

for (const [name, write] of Object.entries(DOCUMENTS)) {
  const path = fileURLToPath(new URL(`../../${name}`, import.meta.url))
  const text = await format(write(), { parser: 'markdown', printWidth: 160 })
  if (!isCheck) await writeFile(path, text)
  else if ((await readFile(path, 'utf8').catch(() => '')) !== text) {
    console.error(`${name} differs from what the engine says. Run: npm run generate`)
    process.exitCode = 1
  }
}
