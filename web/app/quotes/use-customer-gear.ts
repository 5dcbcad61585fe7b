import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import type { OwnedLine } from '../../../core/quote/draft.ts'
import { getCustomer } from '../client/customers.ts'
import { changeGear } from '../customers/change-gear.ts'
import { useDesk } from './desk-context.ts'

/** What the quote's customer has at home, and how one thing more is kept with them. */
export function useCustomerGear() {
  const { view } = useDesk().state
  const { id, erasedOn } = view.customer
  const queries = useQueryClient()
  const customer = useQuery({ queryKey: ['customers', 'one', id], queryFn: () => getCustomer(id), enabled: erasedOn === null })
  const keep = useMutation({
    mutationFn: (line: OwnedLine) => changeGear(id, (gear) => [...gear.filter((one) => one.id !== line.id), line]),
    onSettled: () => queries.invalidateQueries({ queryKey: ['customers'] }),
  })
  return { gear: customer.data?.value.gear ?? [], keep }
}
