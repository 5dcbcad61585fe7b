import { KIND_NAMES, KINDS } from '../../core/catalog/kinds.ts'
import type { ExchangeColumn } from '../../core/exchange/column.ts'
import { columnsOf } from '../../core/exchange/columns-of.ts'
import { DATA_SET_NAMES, EXPORT_SETS, MOST_FILE_BYTES, MOST_ROWS, type ExportSet } from '../../core/exchange/data-set.ts'
import { markup, type Markup } from './markup.ts'
import { pageDocument } from './page-document.ts'

const ABOUT: { readonly [S in ExportSet]: string } = {
  catalog:
    'One product a row, of one kind or of all. A row changes the product with its id, else with its number, else with its kind and name; any other row makes a new product. Kits name their parts, which may stand in the same file. Nothing is deleted: archive what is no longer sold.',
  price_list:
    'What the own store asks: a row for each price of a product and the day it begins, with the store’s own number and how many there are. A row sets the price of its product from its day on; prices of other days stay, and so does what is left empty of number and stock. A sale price holds from that day to its last, or until the next price begins; it is what customers pay, and the price beside it is told as the full one. Only products that are in the catalog are taken. Archived products are not exported.',
  sightings:
    'One price seen a row. A row with the id of a sighting that is here must say the same, since a sighting is never edited; any other row makes a new one, reported by whoever imports it and judged like any other: an odd price waits for a second member. An export leaves out who saw the prices, and what was withdrawn.',
  customers:
    'One customer a row: the only file that holds personal data. Only a manager imports or exports it, and the trail of changes says so. Keep the file as carefully as this service does, and delete it when it is done with. Erased customers are not in it.',
  stores:
    'One store a row, archived ones too. This file is only exported: stores are entered one by one, since the prices and quotes that name one lean on what it is.',
}

const list = (columns: readonly ExchangeColumn[]): Markup =>
  markup`<dl class="answers">${columns.map(({ heading, required, type, help }) => markup`<div><dt><code>${heading}</code>${required ? ', needed' : ''}${SAID[type] === undefined ? '' : `, ${SAID[type]}`}</dt><dd>${help}</dd></div>`)}</dl>`
const SAID: Partial<Record<ExchangeColumn['type'], string>> = { number: 'a number', flag: 'yes or no', amount: 'an amount' }

function setSection(set: ExportSet): Markup {
  const columns = set === 'catalog' ? columnsOf(set, null).filter(({ heading }) => COMMON.has(heading)) : columnsOf(set, null)
  return markup`<section id="${set}"><h2>${DATA_SET_NAMES[set]}</h2><p>${ABOUT[set]}</p>${list(columns)}${set === 'catalog' ? kinds() : ''}</section>`
}
const COMMON: ReadonlySet<string> = new Set([
  'kind',
  'id',
  'name',
  'maker',
  'gtin',
  'oversize',
  'note',
  'parts',
  'warrantyMonths',
  'archived',
])

const kinds = (): Markup =>
  markup`<h3>What a kind has besides</h3><p>A cell under a column that its kind does not have stays empty. Numbers are in the unit that the name of the column ends with.</p>
${KINDS.map((kind) => markup`<details><summary>${KIND_NAMES[kind]} (<code>${kind}</code>)</summary>${list(columnsOf('catalog', kind).filter(({ heading }) => !COMMON.has(heading)))}</details>`)}`

const MB = 1_000_000

/** What the files of an import and an export hold, for whoever makes or reads one. */
export function formatsPage(): Markup {
  return pageDocument({
    title: 'Files for import and export',
    className: 'reference',
    heading: 'Driploop',
    indexed: true,
    main: markup`<h1>Files for import and export</h1>
<p>Two formats, with the same columns. Every export but that of stores can be imported again as it is, and then changes nothing. Pictures of products are in no such file: they are kept in the database, and every backup holds them.</p>
<nav aria-label="Contents"><ul class="plain index"><li><a href="#csv">CSV</a></li><li><a href="#json">JSON</a></li><li><a href="#import">What an import does</a></li>${EXPORT_SETS.map((set) => markup`<li><a href="#${set}">${DATA_SET_NAMES[set]}</a></li>`)}</ul></nav>
<section id="csv"><h2>CSV</h2>
<p>As RFC 4180 has it: a heading, then a row a line, commas between the cells, quotation marks around a cell that has a comma, a line break or a quotation mark in it, and that mark doubled. Semicolons or tabs in place of commas are taken too, and so are a byte order mark and any line ends. The text is UTF-8.</p>
<p>Headings are read without regard to case, spaces, “-” and “_”, in any order; only the needed ones must be there. An empty cell is not known. Numbers have a point or a comma before their decimals and no thousands sign; “1,234” can be read two ways and is refused. Flags are yes or no. Days are like 2026-10-20. At most ${MOST_ROWS} rows and ${MOST_FILE_BYTES / MB} MB.</p>
<p>Spreadsheets run a cell that begins with <code>=</code>, <code>+</code>, <code>-</code> or <code>@</code> as a formula. An export therefore writes an apostrophe before such a text, and an import takes it away again. Columns of numbers are left alone. “Raw, for programs” leaves text as it is; only a text that itself begins with an apostrophe before such a sign gets one more, so that reading it back gives the same text.</p></section>
<section id="json"><h2>JSON</h2>
<p>A list of objects, a row each, with the columns as names: <code>[{"kind": "heater", "name": "Torvane 150 W", "powerW": 150}]</code>. Numbers are numbers, flags are true or false, amounts are text like <code>"159.00"</code>. A name that is left out, or null, is an empty cell. Its schemas are <code>CatalogFile</code>, <code>PriceListFile</code>, <code>SightingsFile</code>, <code>CustomersFile</code> and <code>StoresFile</code> in <a href="/api/reference">the reference</a>.</p></section>
<section id="import"><h2>What an import does</h2>
<p>The file is read in the background, while everybody goes on working. Every fault is named by its row and column and can be had as a file. With a single fault nothing is written; without one, all of it is, at one moment. An import that was tried keeps its rows for a day, waiting for somebody to say “write”. A server that is stopped or killed meanwhile goes on where it was. A cancelled import leaves nothing behind.</p></section>
${EXPORT_SETS.map(setSection)}`,
  })
}
