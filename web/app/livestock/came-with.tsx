import { useState, type ReactElement } from 'react'
import { LIVESTOCK_GROUPS } from '../../../core/catalog/livestock.ts'
import type { GroupBody, StoredGroup } from '../client/livestock.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'

/** The way back for a group that was edited here; nothing for one that is as it came, or our own. */
export function CameWith({
  stored,
  busy,
  onBack,
}: {
  stored: StoredGroup
  busy: boolean
  onBack: (body: GroupBody) => void
}): ReactElement | null {
  const [asked, setAsked] = useState(false)
  const seed = LIVESTOCK_GROUPS.find(({ id }) => id === stored.id)
  if (stored.standing !== 'edited' || seed === undefined) return null
  const { id: _id, standing: _standing, ...body } = seed
  return (
    <div>
      <Button onClick={() => setAsked(true)}>Back to the figures it came with</Button>
      <Dialog
        open={asked}
        title={`Put back what ${seed.name} came with?`}
        onClose={() => setAsked(false)}
        actions={
          <>
            <Button onClick={() => setAsked(false)}>Keep ours</Button>
            <Button
              look="main"
              busy={busy}
              onClick={() => {
                setAsked(false)
                onBack(body)
              }}
            >
              Put it back
            </Button>
          </>
        }
      >
        <p>The figures, texts and source that were entered here are replaced. Issued quotes keep the figures that they were issued with.</p>
      </Dialog>
    </div>
  )
}
