import { useMutation } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { SLOT_PLAIN_NAMES } from '../../../core/catalog/kinds.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'
import { problemOf } from '../client/problem.ts'
import { getPriceViews } from '../client/products.ts'
import { Button } from '../parts/button.tsx'
import { newId } from '../post/new-id.ts'
import { useDesk } from './desk-context.ts'
import { isUnanswered } from './next-slot.ts'
import { useCustomerGear } from './use-customer-gear.ts'

/** Puts what the customer has at home into the slots of a build that nothing answers yet. */
export function OwnedButton({ build }: { build: WorkedBuild }): ReactElement | null {
  const { edit, priced, locked } = useDesk()
  const { gear } = useCustomerGear()
  const fitting = gear.filter((line) => isUnanswered(build, line.slot))
  const put = useMutation({
    mutationFn: async () => {
      const ids = fitting.flatMap((line) => line.productId ?? [])
      if (ids.length > 0) priced((await getPriceViews(ids)).products, [])
      for (const line of fitting) edit({ do: 'put_line', buildId: build.id, line: { ...line, id: newId() }, replaces: [] })
    },
  })
  if (locked || fitting.length === 0) return null
  return (
    <div className="fill-rest">
      <Button small busy={put.isPending} onClick={() => put.mutate()}>
        Put in what they own<span className="sr">, build {build.letter}</span>
      </Button>
      <output className="note">
        {put.isError
          ? `Not put in: ${problemOf(put.error).title}`
          : fitting.map((line) => SLOT_PLAIN_NAMES[line.slot].toLowerCase()).join(', ')}
      </output>
    </div>
  )
}
