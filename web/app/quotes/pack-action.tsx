import { useMutation } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import type { PackSlot } from '../../../core/quote/pack-cover.ts'
import { problemOf } from '../client/problem.ts'
import { Button } from '../parts/button.tsx'
import { newId } from '../post/uuid-v7.ts'
import { useDesk } from './desk-context.ts'
import { fillByPacks } from './fill-packs.ts'
import { kindsFor, sayFindPacks, type Want } from './meets-want.ts'
import { offerOf } from './slot-offer.ts'

/**
 * What a finding about something bought by the pack leads to: the sizes that together bring what is missing at the least cost are put in, and the slot opens on
 * them, to be changed or taken out. Where no packs with a price are known to do, it opens as it is.
 */
export function PackAction({ slot, want }: { slot: PackSlot; want: Want | null }): ReactElement {
  const { inputs, chosen, edit, priced, open } = useDesk()
  const fill = useMutation({
    mutationFn: async () => {
      const mixed = fillByPacks(inputs, chosen, slot, await offerOf(slot), newId)
      if (mixed) {
        priced(mixed.products, mixed.prices)
        edit({
          do: 'set_lines',
          buildId: chosen.id,
          lines: mixed.draft.builds.find(({ id }) => id === chosen.id)?.lines ?? [],
        })
      }
      open({ at: 'cell', buildId: chosen.id, slot, want })
    },
  })
  const [kind] = kindsFor(slot)
  return (
    <>
      <Button small busy={fill.isPending} onClick={() => fill.mutate()}>
        {kind ? sayFindPacks(kind) : 'Open the slot'}
      </Button>
      <output className="reason">{fill.isError && `Not found: ${problemOf(fill.error).title}`}</output>
    </>
  )
}
