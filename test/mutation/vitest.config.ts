import { defineConfig } from 'vitest/config'
import { NearestFirst } from './nearest-first.ts'
import { testsOf } from './nearness.ts'

/**
 * The tests that answer for the physics, by values alone: properties over drawn builds stay out, since a mutant that one draw finds lives through the
 * next, and each would draw thousands of builds.
 */
export default defineConfig({
  test: {
    isolate: false,
    maxWorkers: 1,
    sequence: { sequencer: NearestFirst },
    include: testsOf(process.env['REACH']),
    exclude: ['**/*.properties.test.ts', '**/node_modules/**'],
    setupFiles: ['test/mutation/few-draws.ts'],
    testTimeout: 60_000,
  },
})
