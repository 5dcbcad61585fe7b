import type { ReactElement } from 'react'
import { Button } from './button.tsx'

/** How many of how many, and the next ones. */
export function MoreRows({
  shown,
  total,
  page,
  busy,
  onMore,
}: {
  shown: number
  total: number
  page: number
  busy: boolean
  onMore: () => void
}): ReactElement {
  return (
    <p className="acts">
      <output className="quiet">
        {shown} of {total}
      </output>
      {shown < total && (
        <Button small busy={busy} onClick={onMore}>
          Show {Math.min(page, total - shown)} more
        </Button>
      )}
    </p>
  )
}
