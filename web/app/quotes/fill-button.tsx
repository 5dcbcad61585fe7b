import { useMutation } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { SLOT_PLAIN_NAMES, type Slot } from '../../../core/catalog/kinds.ts'
import type { BuildLine } from '../../../core/quote/draft.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'
import { problemOf } from '../client/problem.ts'
import { Button } from '../parts/button.tsx'
import { newId } from '../post/new-id.ts'
import { useDesk } from './desk-context.ts'
import { shortSlots } from './fill-packs.ts'
import { fillRest } from './fill-rest.ts'
import { unanswered } from './next-slot.ts'
import { offerOf } from './slot-offer.ts'

interface Done {
  before: BuildLine[]
  after: BuildLine[]
  filled: Slot[]
  left: Slot[]
}

/** Fills what is still open with the cheapest that fits, and takes it all back with one press. */
export function FillButton({ build }: { build: WorkedBuild }): ReactElement | null {
  const { inputs, state, edit, priced, locked, chosen } = useDesk()
  const lines = state.draft.builds.find((one) => one.id === build.id)?.lines ?? []
  const fill = useMutation({
    mutationFn: async (): Promise<Done> => {
      const { inputs: after, filled, left } = await fillRest(inputs, build.id, offerOf, newId)
      const put = after.draft.builds.find((one) => one.id === build.id)?.lines ?? []
      priced(after.products, after.prices)
      edit({ do: 'set_lines', buildId: build.id, lines: put })
      return { before: lines, after: put, filled, left }
    },
  })
  const done = fill.data
  // Once something else was changed, taking back would take that too.
  const undoable = done !== undefined && done.filled.length > 0 && done.after === lines
  if (locked || (!undoable && unanswered(build).length + shortSlots(build).length === 0)) return null
  const undo = (): void => {
    if (done) edit({ do: 'set_lines', buildId: build.id, lines: done.before })
    fill.reset()
  }
  return (
    <div className="fill-rest">
      {undoable ? (
        <Button small onClick={undo}>
          Take it back<span className="sr">, build {build.letter}</span>
        </Button>
      ) : (
        <Button small busy={fill.isPending} {...(build.id === chosen.id ? { 'aria-keyshortcuts': 'F' } : {})} onClick={() => fill.mutate()}>
          Fill the rest<span className="sr"> of build {build.letter}</span>
        </Button>
      )}
      <output className="note">{fill.isError ? `Not filled: ${problemOf(fill.error).title}` : done ? sayDone(done, undoable) : ''}</output>
    </div>
  )
}

const sayNames = (slots: Slot[]): string => slots.map((slot) => SLOT_PLAIN_NAMES[slot].toLowerCase()).join(', ')

function sayDone({ filled, left }: Done, undoable: boolean): string {
  const put = undoable ? `Filled with the cheapest that fits: ${sayNames(filled)}.` : ''
  const open = left.length > 0 ? `Nothing with a price is known to fit: ${sayNames(left)}.` : ''
  return [put, open].filter(Boolean).join(' ')
}
