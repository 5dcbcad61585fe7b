import type { Field } from '../fields.ts'
import type { Kind } from './kinds.ts'
import { SPEC_FIELDS } from './spec-fields.ts'

/** One column of the product import. */
export interface CsvColumn {
  /** Heading as written in the template. Read without regard to case, spaces, "-" and "_". */
  heading: string
  required: boolean
  /** What a cell holds, for the page that explains the file. */
  help: string
  /** Set for a spec field. */
  field?: Field
}

const COMMON: CsvColumn[] = [
  {
    heading: 'id',
    required: false,
    help: 'Id of a product that is already here: the row changes it. Empty, or the id of another install: a product with the same GTIN, else one of this kind with the same name is changed, else a new one is made.',
  },
  { heading: 'name', required: true, help: 'As a person would say it, the maker included.' },
  { heading: 'maker', required: false, help: 'Maker.' },
  { heading: 'gtin', required: false, help: 'Number under the barcode: 8, 12, 13 or 14 digits.' },
  { heading: 'oversize', required: false, help: 'yes or no; empty is no. Goods that a parcel service takes only at a surcharge.' },
  { heading: 'note', required: false, help: 'Note.' },
]

const PARTS: CsvColumn = {
  heading: 'parts',
  required: true,
  help: 'Products in the kit: name or id, " x " and how many, separated by ";". Without a number it is 1. Example: Torvane 150 W x 2; Pellick C-1800',
}

/**
 * Columns of the product import for a kind, in the order of the template: the common ones, a kit's parts, then the spec fields with
 * their unit of storage in the heading (`lengthMm`, `powerW`). A cell that is empty means not known.
 */
export function csvColumns(kind: Kind): CsvColumn[] {
  const spec = SPEC_FIELDS[kind].map((field): CsvColumn => ({
    heading: field.key,
    required: field.required,
    help: fieldHelp(field),
    field,
  }))
  return [...COMMON, ...(kind === 'kit' ? [PARTS] : []), ...spec]
}

function fieldHelp(field: Field): string {
  const values =
    field.type === 'flag'
      ? 'yes or no'
      : field.type === 'choice'
        ? field.options.map(({ value }) => value).join(', ') + (field.open === true ? ', or the name or id of one of your own' : '')
        : `${field.min} to ${field.max} ${field.unitText}`.trim()
  return [`${field.label}: ${values}.`, field.help].filter(Boolean).join(' ')
}

/** How headings are compared. @example headingKey(' Length_mm ') // 'lengthmm' */
export const headingKey = (heading: string): string => heading.toLowerCase().replace(/[\s_-]/g, '')
