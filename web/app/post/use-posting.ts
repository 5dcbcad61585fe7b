import { useQueryClient } from '@tanstack/react-query'
import { useRef, useState } from 'react'
import type { SightingBody } from '../client/sightings.ts'
import { readPricesAnew } from '../prices/read-anew.ts'
import { usePerson } from '../session/session.ts'
import { useStoreMoney } from '../stores/store-currency.ts'
import { postOne, type About } from './post-one.ts'
import type { Posted } from './posted.ts'
import { shortName } from './sighting-draft.ts'

type Post = (body: Omit<SightingBody, 'id'>, about: About) => Promise<void>

/** Posts a sighting, once, however often the button is pressed; `busy` holds the product and store that is under way. */
export function usePosting(onDone: (posted: Posted) => void): { post: Post; busy: About | null; notKept: boolean } {
  const person = usePerson()
  const say = useStoreMoney()
  const queries = useQueryClient()
  const [busy, setBusy] = useState<About | null>(null)
  const [notKept, setNotKept] = useState(false)
  // A second press may come before the first is drawn: only what is set at once holds it back.
  const underWay = useRef(false)
  const post: Post = async (body, about) => {
    if (underWay.current) return
    underWay.current = true
    setBusy(about)
    setNotKept(false)
    try {
      const sent = await postOne(person.id, body, about)
      if (sent.kind === 'posted') void readPricesAnew(queries)
      const what = `${say(body.priceMinor, body.storeId)} for ${about.product.name} at ${shortName(about.storeName)}`
      onDone({ ...sent, productId: about.product.id, what })
    } catch {
      setNotKept(true)
    }
    underWay.current = false
    setBusy(null)
  }
  return { post, busy, notKept }
}
