import { useState } from 'react'
import type { BoardRow } from '../../../core/pricing/record.ts'
import type { SightingAct } from '../client/sightings.ts'
import { usePosted } from '../post/use-posted.ts'
import { usePosting } from '../post/use-posting.ts'
import { readUnsent, type Unsent } from '../post/unsent.ts'
import { useUnsent } from '../post/use-unsent.ts'
import { usePerson, useToday } from '../session/session.ts'
import { keptHere } from './kept-here.ts'
import { withKept, type KeptRow } from './kept-rows.ts'
import { seenAgain } from './unchanged.ts'
import { useSightingAct } from './use-sighting-act.ts'

/** What can be done in a row of the board: a word on it, or "unchanged"; disputed rows stay while the board is open. */
export function useBoardActs(rows: readonly BoardRow[]) {
  const person = usePerson()
  const today = useToday()
  const [kept, setKept] = useState<readonly KeptRow[]>([])
  const [posted, setPosted] = usePosted(person.id)
  const queue = useUnsent(person.id)
  const [again, setAgain] = useState<string | null>(null)
  const { post, busy, notKept } = usePosting(setPosted)
  const shown = withKept(rows, kept)
  const act = useSightingAct((sighting) => {
    const at = shown.findIndex((row) => row.sighting.id === sighting.id)
    const row = shown[at]
    if (row) setKept([...kept.filter((one) => one.row.sighting.id !== sighting.id), { row: { ...row, sighting }, at }])
  })
  return {
    shown,
    posted,
    notKept,
    errorAt: (id: string): unknown => (act.variables?.id === id ? act.error : null),
    keptAt: ({ sighting }: BoardRow): Unsent | undefined => keptHere(queue, sighting),
    busyId: act.isPending ? act.variables.id : busy ? again : null,
    vote: (id: string, name: SightingAct): void => act.mutate({ id, act: name }),
    mayRepeat: ({ sighting }: BoardRow): boolean => seenAgain(sighting, today) !== null,
    repeat: ({ sighting, kind }: BoardRow): void => {
      const body = seenAgain(sighting, today)
      // Asked of the storage itself: a second tap may come before the first is drawn.
      if (!body || keptHere(readUnsent(person.id), sighting)) return
      setAgain(sighting.id)
      const product = { id: sighting.productId, name: sighting.productName, kind }
      void post(body, { product, storeName: sighting.storeName, replaces: null })
    },
  }
}
