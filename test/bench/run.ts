import { writeFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import boardGrowth from './board-growth.ts'
import deskKeystroke from './desk-keystroke.ts'
import importRows from './import-rows.ts'
import quotePdf from './quote-pdf.ts'
import productPageGrowth from './product-page-growth.ts'
import productRead from './product-read.ts'
import recordLearn from './record-learn.ts'
import recordRebuild from './record-rebuild.ts'
import searchProducts from './search-products.ts'
import sightingPost from './sighting-post.ts'
import sizingBundle from './sizing-bundle.ts'
import sizingRanges from './sizing-ranges.ts'
import sizingReport from './sizing-report.ts'
import startWarm from './start-warm.ts'
import tiersGrowth from './tiers-growth.ts'
import watchesGrowth from './watches-growth.ts'
import { withBenchPostgres } from './postgres.ts'
import type { Measurement } from './measurement.ts'

/** `npm run bench [name]`: prints a table and writes bench.json, one row a measurement, baseline and value in turn in one run. */
const BENCHES: Record<string, () => Promise<Measurement[]>> = {
  'sizing.report': sizingReport,
  'sizing.ranges': sizingRanges,
  'sizing.bundle': sizingBundle,
  'desk.keystroke': deskKeystroke,
  'quote.pdf': quotePdf,
  'start.warm': startWarm,
  'sighting.post': () => withBenchPostgres(sightingPost),
  'search.products': searchProducts,
  'import.rows': () => withBenchPostgres(importRows),
  'board.growth': () => withBenchPostgres(boardGrowth),
  'product-page.growth': () => withBenchPostgres(productPageGrowth),
  'tiers.growth': () => withBenchPostgres(tiersGrowth),
  'watches.growth': () => withBenchPostgres(watchesGrowth),
  'record.learn': () => withBenchPostgres(recordLearn),
  'record.rebuild': () => withBenchPostgres(recordRebuild),
  'product.read': () => withBenchPostgres(productRead),
}

const wanted = process.argv[2]
const names = Object.keys(BENCHES).filter((name) => wanted === undefined || name.startsWith(wanted))
if (names.length === 0) {
  console.error(`No measurement is called "${wanted}". Known: ${Object.keys(BENCHES).join(', ')}.`)
  process.exit(1)
}
const rows: Measurement[] = []
for (const name of names) rows.push(...(await BENCHES[name]!()))
console.table(
  rows.map((row) => ({
    ...row,
    value: row.value.toPrecision(4),
    baseline: row.baseline?.toPrecision(4),
    ratio: row.ratio?.toPrecision(3),
  })),
)
writeFileSync('bench.json', JSON.stringify({ node: process.version, cores: availableParallelism(), rows }, null, 2) + '\n')
process.exit(0)
