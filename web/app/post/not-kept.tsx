import type { ReactElement } from 'react'

/** Posting needs a place to keep the sighting first. */
export const NotKept = (): ReactElement => (
  <p className="fault" role="alert">
    Not posted: this browser refuses to keep anything. Allow it to store data for this page, then post again.
  </p>
)
