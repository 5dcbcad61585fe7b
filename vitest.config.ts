import { defineConfig } from 'vitest/config'

/**
 * Four suites. The database suite runs twice, once on each engine: what it tests does not know which.
 * `npm test` (test/run.ts) picks the suites that this machine can run and names the others.
 */
const database = ['test/db/**/*.test.ts', 'test/api/**/*.test.ts']
/** The PDF knows no database: once is enough. */
const paper = ['test/api/pdf/**/*.test.ts']

export default defineConfig({
  test: {
    pool: 'forks',
    maxWorkers: 2,
    projects: [
      {
        test: {
          name: 'rules',
          setupFiles: ['test/support/property-seed.ts'],
          include: [
            'test/core/**/*.test.ts',
            'test/reference/**/*.test.ts',
            'test/calibration/**/*.test.ts',
            'test/documents/**/*.test.ts',
            'test/web/**/*.test.{ts,tsx}',
            'test/house/**/*.test.ts',
            ...paper,
          ],
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'embedded',
          setupFiles: ['test/support/property-seed.ts'],
          include: database,
          exclude: paper,
          env: { TEST_ENGINE: 'embedded' },
          testTimeout: 60_000,
          hookTimeout: 120_000,
          globalSetup: ['test/support/embedded-template.ts'],
        },
      },
      {
        test: {
          name: 'postgres',
          setupFiles: ['test/support/property-seed.ts'],
          include: database,
          exclude: paper,
          env: { TEST_ENGINE: 'postgres' },
          testTimeout: 60_000,
          hookTimeout: 120_000,
          globalSetup: ['test/support/postgres-server.ts'],
        },
      },
      {
        test: {
          name: 'browser',
          include: ['test/browser/**/*.test.ts'],
          testTimeout: 180_000,
          hookTimeout: 180_000,
          // A machine with two browsers on it answers late; a second, the usual, is a matter of luck there.
          expect: { poll: { timeout: 30_000 } },
          globalSetup: ['test/browser/support/demo-template.ts'],
        },
      },
    ],
  },
})
