import type { ReactElement } from 'react'
import { Button } from '../parts/button.tsx'
import { NoSignalSign } from '../parts/signs.tsx'
import { useOnline } from '../parts/use-online.ts'
import { NotKept } from './not-kept.tsx'

/** The one filled button, in reach of the thumb; above it what happens without a signal. */
export function PostFoot({ words, busy, notKept }: { words: string; busy: boolean; notKept: boolean }): ReactElement {
  const online = useOnline()
  return (
    <div className="foot">
      {notKept && <NotKept />}
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
