/** Outcome of reading a CSV of products. With any fault nothing is written, dry run or not. */
export interface ImportReport {
  dryRun: boolean
  applied: boolean
  rows: number
  creates: number
  updates: number
  unchanged: number
  faults: ImportFault[]
  /** True when more faults were found than are listed. */
  more: boolean
}
export interface ImportFault {
  /** Line of the file, the heading being 1. */
  row: number
  column: string | null
  message: string
}
