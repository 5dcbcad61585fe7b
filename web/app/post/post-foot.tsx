import type { ReactElement } from 'react'
import { Button } from '../parts/button.tsx'
import { NoSignalSign } from '../parts/signs.tsx'
import { useOnline } from './use-online.ts'

/** The one filled button, in reach of the thumb; above it what happens without a signal. */
export function PostFoot({ words, busy, notKept }: { words: string; busy: boolean; notKept: boolean }): ReactElement {
  const online = useOnline()
  return (
    <div className="foot">
      {notKept && (
        <p className="fault" role="alert">
          Not posted: this browser refuses to keep anything. Allow it to store data for this page, then post again.
        </p>
      )}
      {!online && (
        <p className="off">
          <NoSignalSign />
          No signal. Kept on this phone; posts once, by itself.
        </p>
      )}
      <Button look="main" type="submit" busy={busy}>
        {words}
      </Button>
    </div>
  )
}
