import { useMutation } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import type { PackSlot } from '../../../core/quote/pack-cover.ts'
import { problemOf } from '../client/problem.ts'
import { Button } from '../parts/button.tsx'
import { newId } from '../post/new-id.ts'
import { useDesk } from './desk-context.ts'
import { fillByPacks } from './fill-packs.ts'
import { kindsFor, sayFindPacks, type Want } from './meets-want.ts'
import { offerOf } from './slot-offer.ts'

/**
 * What a finding about something bought by the pack leads to: the slot opens with the sizes proposed that together bring what is missing at the least cost, more
 * of what is there where something is. Nothing is put in until that is pressed. Where no packs with a price are known to do, it opens as it is.
 */
export function PackAction({ slot, want }: { slot: PackSlot; want: Want | null }): ReactElement {
  const { inputs, chosen, open } = useDesk()
  const look = useMutation({
    mutationFn: async () => {
      const mixed = fillByPacks(inputs, chosen, slot, await offerOf(slot), newId)
      const had = new Set(chosen.rows.map(({ lineId }) => lineId))
      const lines = mixed?.draft.builds.find(({ id }) => id === chosen.id)?.lines.filter(({ id }) => !had.has(id)) ?? []
      const mix = mixed && { lines, products: mixed.products, prices: mixed.prices }
      open({ at: 'cell', buildId: chosen.id, slot, want, ...(mix ? { mix } : {}) })
    },
  })
  const [kind] = kindsFor(slot)
  return (
    <>
      <Button small busy={look.isPending} onClick={() => look.mutate()}>
        {kind ? sayFindPacks(kind) : 'Open the slot'}
      </Button>
      <output className="reason">{look.isError && `Not found: ${problemOf(look.error).title}`}</output>
    </>
  )
}
