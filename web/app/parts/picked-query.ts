import { queryOptions } from '@tanstack/react-query'
import type { Kind } from '../../../core/catalog/kinds.ts'
import { keptAnswer } from '../offline/kept-answer.ts'
import { listProducts } from '../client/products.ts'

/** As many as a list shows without becoming a second catalog: typing on is faster than scrolling. */
const SHOWN = 12

/** Products whose name or maker holds what is typed. */
export const pickedQuery = ({ kind, typed }: { kind?: Kind | undefined; typed: string }) =>
  queryOptions({
    queryKey: ['products', 'pick', kind ?? '', typed.trim()],
    queryFn: ({ signal }) => {
      const read = () => listProducts({ kind, q: typed.trim(), limit: SHOWN }, signal)
      return kind === undefined && typed.trim() === '' ? keptAnswer('products', read)() : read()
    },
  })
