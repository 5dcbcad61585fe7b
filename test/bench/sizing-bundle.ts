import { resolve } from 'node:path'
import { gzipSync } from 'node:zlib'
import { build } from 'vite'
import type { Measurement } from './measurement.ts'

const root = resolve(import.meta.dirname, '../..')
const ENTRIES = { value: 'core/sizing/sensitivity.ts', baseline: 'core/units/say.ts' }

async function kilobytesOf(entry: string): Promise<number> {
  const made = await build({
    configFile: false,
    root,
    logLevel: 'silent',
    build: { write: false, minify: true, lib: { entry: resolve(root, entry), formats: ['es'] }, target: 'es2023' },
  })
  const outputs = (Array.isArray(made) ? made : [made]).flatMap((each) => ('output' in each ? each.output : []))
  const code = outputs.map((file) => (file.type === 'chunk' ? file.code : '')).join('')
  return gzipSync(code).length / 1000
}

/** The engine with all that it needs, bundled and compressed as for a browser, against the words of units that every screen has anyway. */
export default async function sizingBundleBench(): Promise<Measurement[]> {
  const value = await kilobytesOf(ENTRIES.value)
  const baseline = await kilobytesOf(ENTRIES.baseline)
  return [{ name: 'sizing.bundle', value, unit: 'kB', baseline, ratio: value / baseline }]
}
