/** A set of stores that the manager groups, like those of one valley. */
export interface Region {
  id: string
  name: string
  storeIds: string[]
  version: number
}
