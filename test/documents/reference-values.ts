import { mostOf, type ReferenceTopic, type ReferenceValue } from '../reference/values/reference-value.ts'
import { TOPICS } from '../reference/values/topics.ts'

const LONGEST = 14
const SHORT_DIGITS = 6

/** Digits that a figure is told with, leading zeros apart. */
const digitsOf = (text: string): number => text.replace(/e.*$/, '').replace('.', '').replace(/^0+/, '').length

/** A value as its source has it; a formula's to six digits. */
function sayValue(value: number): string {
  const text = String(value)
  return text.length > LONGEST && digitsOf(text) > LONGEST ? String(Number(value.toPrecision(SHORT_DIGITS))) : text
}

/** What the code makes of it: one digit more than the source, so that the difference shows. */
function sayComputed({ value, computed }: ReferenceValue): string {
  const digits = Math.min(SHORT_DIGITS * 2, Math.max(3, digitsOf(sayValue(value))) + 1)
  return String(Number((computed() ?? NaN).toPrecision(digits)))
}

/** A tolerance of less than this is an exact value and the last digit of a sum. */
const EXACT = 1e-11
function sayTolerance(row: ReferenceValue): string {
  const most = mostOf(row)
  if (most < EXACT) return 'exact'
  return 'relative' in row.within ? `${Number((most * 100).toPrecision(3))} %` : `${most}`
}

const lineOf = (row: ReferenceValue): string =>
  `| ${[row.quantity, sayValue(row.value), sayComputed(row), row.unit, sayTolerance(row), row.standing, row.source, `\`${row.by}\``].join(' | ')} |`

const sectionOf = ({ title, about, alsoIn, values }: ReferenceTopic): string =>
  [
    `## ${title}`,
    '',
    about,
    '',
    '| Quantity | Value | Reckoned | Unit | Within | Standing | Source | Reckoned by |',
    '|---|---|---|---|---|---|---|---|',
    ...values.map(lineOf),
    '',
    `Asserted by \`test/reference/reference-values.test.ts\`; the same code is held further by ${alsoIn.map((file) => `\`${file}\``).join(', ')}.`,
    '',
  ].join('\n')

const head = (count: number): string => `# Values that the engine is held to

Written by \`npm run generate\` from the table that the test asserts; not to be edited.

${count} values by topic: what a source says, what the engine makes of the same case, how far apart the two may be, and how the value came to be known.

- **published**: the source's numbers were seen, often in a public reproduction of it.
- **from memory**: published, recalled and not seen again. Look it up before you quote it.
- **common practice**: a habit of the trade without a source.
- **own**: computed apart from this code, by another program or by hand.

A tolerance in per cent is one of the value; any other is in its unit. Where a source tells two digits, or another formula stands against ours, the tolerance is as
wide as that. A file of \`test/reference\` under *Reckoned by* is an oracle: a second way to the same figure, held to print before the engine is held to it.

Not here is what nothing reckons: how fast nitrifying bacteria grow (a kit says when a tank is ready), how much thiosulfate breaks chlorine (the conditioner's label
does), curved panes, creep of acrylic and glued joints (*not known*, and said so).

`

/** The whole document. */
export const referenceValues = (): string =>
  `${head(TOPICS.reduce((sum, { values }) => sum + values.length, 0))}${TOPICS.map(sectionOf).join('\n').trimEnd()}\n`
