import type { OwnedLine } from '../../../core/quote/draft.ts'
import { getCustomer, updateCustomer } from '../client/customers.ts'
import { problemOf } from '../client/problem.ts'

/** Changes what is kept as owned on the newest of the customer; once more where somebody was faster, since the change can be laid over theirs. */
export async function changeGear(customerId: string, change: (gear: OwnedLine[]) => OwnedLine[]): Promise<void> {
  for (let tries = 1; ; tries += 1) {
    const { value, etag } = await getCustomer(customerId)
    const { name, reach, note, gear } = value
    try {
      await updateCustomer(customerId, { name, reach, note, gear: change(gear) }, etag || `"${value.version}"`)
      return
    } catch (error) {
      if (problemOf(error).status !== 412 || tries > 2) throw error
    }
  }
}
