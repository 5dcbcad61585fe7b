/** What a file can hold, each under its name in addresses. */
export const DATA_SETS = ['catalog', 'price_list', 'sightings', 'customers'] as const
export type DataSet = (typeof DATA_SETS)[number]
/** What is exported: stores too, which are entered one by one. */
export const EXPORT_SETS = [...DATA_SETS, 'stores'] as const
export type ExportSet = (typeof EXPORT_SETS)[number]

export const DATA_SET_NAMES: { readonly [S in ExportSet]: string } = {
  catalog: 'Catalog',
  price_list: 'Price list',
  sightings: 'Sightings',
  customers: 'Customers',
  stores: 'Stores',
}

/** Rows of one file: a wholesaler's list of everything has a tenth of it. */
export const MOST_ROWS = 200_000
/** Bytes of one file: 500 for each of its rows. */
export const MOST_FILE_BYTES = 100_000_000
/** Faults kept of one file: one for each row of the longest. A file of something else has several in every row, which say one thing. */
export const MOST_FAULTS = MOST_ROWS

/** What is wrong in a file, and where. */
export interface ImportFault {
  /** Row of the file as a spreadsheet counts, the heading being 1; in JSON the first object is 1. */
  row: number
  /** Null where it is about the whole row. */
  column: string | null
  message: string
  /** How many rows have the same, where it is told once for all of them: the first is named. */
  rows?: number
}
