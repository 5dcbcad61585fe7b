import { resolve } from 'node:path'
import { gzipSync } from 'node:zlib'
import { build } from 'vite'
import type { Measurement } from './measurement.ts'

const root = resolve(import.meta.dirname, '../..')
/** The whole engine; what every screen has of the core anyway; and what a report that is read asks for besides: ranges, questions, sources, cautions, plots. */
const [ENGINE, WORDS, WHEN_READ] = [
  'core/sizing/engine.ts',
  'core/units/say.ts',
  ['core/sizing/sensitivity.ts', 'core/sizing/all-figures.ts'],
] as const

/** All that the modules export and need, in one file, made small as the application's own are; kilobytes compressed. */
async function kilobytesOf(...modules: string[]): Promise<number> {
  const name = 'virtual:all'
  const made = await build({
    configFile: false,
    root,
    logLevel: 'silent',
    plugins: [
      {
        name: 'all',
        resolveId: (id) => (id === name ? id : undefined),
        load: (id) => (id === name ? modules.map((path) => `export * from ${JSON.stringify(resolve(root, path))}`).join('\n') : undefined),
      },
    ],
    build: {
      write: false,
      minify: true,
      target: 'es2023',
      modulePreload: { polyfill: false },
      rolldownOptions: { input: name, preserveEntrySignatures: 'strict' },
    },
  })
  const outputs = (Array.isArray(made) ? made : [made]).flatMap((each) => ('output' in each ? each.output : []))
  const code = outputs.map((file) => (file.type === 'chunk' ? file.code : '')).join('')
  return gzipSync(code).length / 1000
}

/**
 * The engine with all that a report takes while parts are chosen, every verdict and sentence and the figures that others reckon with, compressed as for a
 * browser, against the words of units that every screen has anyway. In a row of its own the same with what comes when somebody reads the report, its plots
 * included and the year of energy, which paper alone tells: nothing is left out there.
 */
export default async function sizingBundleBench(): Promise<Measurement[]> {
  const baseline = await kilobytesOf(WORDS)
  const row = (name: string, value: number): Measurement => ({ name, value, unit: 'kB', baseline, ratio: value / baseline })
  return [row('sizing.bundle', await kilobytesOf(ENGINE)), row('sizing.bundle.read', await kilobytesOf(ENGINE, ...WHEN_READ))]
}
