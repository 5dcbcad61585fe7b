import { format } from 'prettier'
import type { TraitRow } from './by-trait.ts'
import { countedRate, COUNTING_TABLE } from './counting-bias.ts'
import type { ReliabilityBin } from './statistics/reliability.ts'
import type { Aim, Summary } from './summary.ts'

export interface Run {
  commit: string
  seed: string
}

const HEAD = `# How far the outlook can be trusted

Written by \`npm run calibrate\`; not to be edited. Markets are simulated by a generator that shares nothing with the outlook (\`test/calibration/market\`): kinds,
products, stores, rates and lengths of sales, depths, sale times, changes of regular prices, and members who report more on sale days, in duplicate, carelessly, or
not at all for weeks. Their parameters are drawn from the hash of the commit, so that nobody can have tuned to them. The outlook sees the record of each market as the
service would keep it, up to a day of the year drawn at random; then 120 days come.

What is held against a forecast is what a shopper pays who follows its advice day by day from the next day on. *True parameters* is a forecaster who knows everything of
the market but what comes: nobody can do better, and its figures show what chance alone leaves. The *oracle* of the savings knows the same.
Standard errors are by market.
`

const figure = (value: number): string =>
  Number.isInteger(value) ? String(value) : Math.abs(value) < 0.1 ? value.toFixed(4) : value.toFixed(3)

const aimRow = ({ what, aim, value, standardError, cases, met, truth }: Aim): string =>
  `| ${what} | ${aim} | ${figure(value)} | ${standardError === null ? '' : figure(standardError)} | ${truth === null ? '' : figure(truth)} | ${cases} | ${met ? 'met' : '**MISSED**'} |`

const binRow = ({ cases, told, came }: ReliabilityBin): string =>
  `| ${figure(told)} | ${figure(came)} | ${figure(Math.abs(told - came))} | ${cases} |`

function countingRow(each: (typeof COUNTING_TABLE)[number], seed: string): string {
  const { value, standardError } = countedRate(each, `${seed}/counting/${each.salesPerYear}/${each.reportsPerYear}`)
  return `| ${each.salesPerYear} | ${each.reportsPerYear} | ${100 * each.reportsOnSale} % | ${value.toFixed(2)} | ${standardError.toFixed(2)} | ${each.there} |`
}

const traitRow = ({ trait, word, cases, distance, meanPlace, chanceTold, saleCame, savedFree, savedAtCost }: TraitRow): string =>
  `| ${trait}: ${word} | ${cases} | ${[distance, meanPlace, chanceTold, saleCame, savedFree, savedAtCost].map((value) => value.toFixed(3)).join(' | ')} |`

/** Bins are many: about this many rows of them, each of neighbouring ones, are printed. */
const PRINTED_BINS = 12

function fewer(bins: readonly ReliabilityBin[]): ReliabilityBin[] {
  const together = Math.max(1, Math.ceil(bins.length / PRINTED_BINS))
  return Array.from({ length: Math.ceil(bins.length / together) }, (_, index) => {
    const some = bins.slice(index * together, (index + 1) * together)
    const cases = some.reduce((sum, bin) => sum + bin.cases, 0)
    const mean = (of: (bin: ReliabilityBin) => number): number => some.reduce((sum, bin) => sum + of(bin) * bin.cases, 0) / cases
    return { cases, told: mean(({ told }) => told), came: mean(({ came }) => came) }
  })
}

/** The result of a run in words and tables. */
export async function calibrationDocument(summary: Summary, traits: readonly TraitRow[], { commit, seed }: Run): Promise<string> {
  const missed = summary.aims.filter(({ met }) => !met)
  const verdict =
    missed.length === 0
      ? `All ${summary.aims.length} aims are met.`
      : `**${missed.length} of ${summary.aims.length} aims are missed**: ${missed.map(({ what }) => what).join('; ')}.`
  const text = `${HEAD}
${summary.markets} markets, ${summary.sightings} sightings, ${summary.cases} forecasts of a line (${summary.unanswered} more were asked for and had no known price).
Commit \`${commit}\`${seed === commit ? '' : `, seed \`${seed}\`: a run for looking, not on the commit's own seed`}.

${verdict}

| What | Aim | Came out | Standard error | True parameters | Cases | |
|---|---|---|---|---|---|---|
${summary.aims.map(aimRow).join('\n')}

Savings are against buying on the day of the record; what is bought is one line at a time, and a day's wait costs nothing or 0.2 % of its price. The upper bound is
of the two-sided 95 % interval: the mean of the paired difference and 1.96 standard errors.

## Chances of a sale

The aims take bins of 500; here some stand together.

| Told | Came | Gap | Cases |
|---|---|---|---|
${fewer(summary.bins).map(binRow).join('\n')}

## In which markets

Place: where outcomes fall among the draws on average, 0.5 where nothing leans, less where it came out cheaper than told. Savings are shares of the oracle's; over few
lines they wander. Whether there is a sale on the day of the record is true of the market and mostly unknown to the record.

| Lines with | Cases | Distance | Place | Sale told | Sale came | Saved, free | Saved, 0.2 % a day |
|---|---|---|---|---|---|---|---|
${traits.map(traitRow).join('\n')}

## What counting would make of it

400 products over two years, sales of a week; sales that were seen, over the days that reports vouch for (a month each). People report because there is a sale, so that
counting is wrong in both directions, by how they report. The last column is an earlier simulation's.

| True sales a year | Shelf reports a year | Reported on a sale day | Counted | Standard error | Earlier |
|---|---|---|---|---|---|
${COUNTING_TABLE.map((each) => countingRow(each, seed)).join('\n')}
`
  return format(text, { parser: 'markdown', printWidth: 160 })
}
