import react from '@vitejs/plugin-react'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

/** Of the engine's folder, what a report asks for when it is read: the browser takes it with the report's panel. */
const WHEN_READ = [
  'finding-cautions',
  'flow-inputs',
  'input-ends',
  'open-inputs',
  'open-questions',
  'plugged-inputs',
  'range-words',
  'room-inputs',
  'sensitivity',
  'sources',
  'tank-inputs',
  'told-report',
]

/** Builds the application into web/dist. Nothing is inlined: the content security policy lets in files of our own address alone. */
export default defineConfig({
  root: here('./app'),
  plugins: [react()],
  build: {
    outDir: here('./dist'),
    emptyOutDir: true,
    target: 'es2023',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: { index: here('./app/index.html'), worker: here('./app/offline/worker.ts') },
      // A worker answers for the addresses below its own: it lies at the top, under a name that never changes.
      output: {
        entryFileNames: ({ name }) => (name === 'worker' ? 'worker.js' : 'assets/[name]-[hash].js'),
        // The engine is a part of its own. What others need of the core as well stands apart from it, or they would bring all of it; so does what only a
        // report that is read asks for: ranges, questions, sources and cautions come with its panel.
        codeSplitting: {
          groups: [
            { name: 'core', test: /core\/(units\/|catalog\/(kinds|common-sizes|tank-shape)\.ts|(fields|result)\.ts)/, priority: 2 },
            { name: 'sizing', test: new RegExp(`core/(sizing|water)/(?!(${WHEN_READ.join('|')})\\.ts)`), priority: 1 },
          ],
        },
      },
    },
  },
})
