import type { ReactElement } from 'react'
import { Button } from './button.tsx'

/** How many of how many, and the next ones. `counted` where rows are counted up to there alone: a total beyond it says no more. */
export function MoreRows({
  shown,
  total,
  counted = Infinity,
  page,
  busy,
  onMore,
}: {
  shown: number
  total: number
  counted?: number
  page: number
  busy: boolean
  onMore: () => void
}): ReactElement {
  return (
    <p className="acts">
      <output className="quiet">
        {shown} of {total > counted ? `more than ${counted}` : total}
      </output>
      {shown < total && (
        <Button small busy={busy} onClick={onMore}>
          Show {Math.min(page, total - shown)} more
        </Button>
      )}
    </p>
  )
}
