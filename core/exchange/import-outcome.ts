import type { DataSet } from './data-set.ts'
import type { Kind } from '../catalog/kinds.ts'

/** What an import was asked for. */
export interface ImportOrder {
  set: DataSet
  /** Of a catalog: the kind of every row that names none. */
  kind: Kind | null
  format: 'csv' | 'json'
  /** As the reader's computer calls the file. */
  fileName: string
  bytes: number
  /** True: read and check, and wait for somebody to say "write". */
  dryRun: boolean
}

/** What came of it. With any fault nothing was written. */
export interface ImportOutcome {
  rows: number
  creates: number
  updates: number
  unchanged: number
  faults: number
  /** True where more faults were found than are kept. */
  more: boolean
  applied: boolean
  /** True while its rows are kept, checked, and wait to be written. */
  ready: boolean
}

/** What an import is at; its `done` and `total` count bytes while it reads and rows from then on. */
export const IMPORT_PHASES = ['reading', 'checking', 'writing'] as const
export type ImportPhase = (typeof IMPORT_PHASES)[number]
