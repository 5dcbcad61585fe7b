/** A figure that was opened: what it is in words, and the sightings behind it. */
export interface Behind {
  words: string
  ids: readonly string[]
}

/** Opens the sightings behind a figure where they are listed. */
export type OpenBehind = (behind: Behind) => void
