import { queryOptions } from '@tanstack/react-query'
import { countNotices, getFeedLink, listNotices, listWatches } from '../client/watches.ts'

/** How often a screen that is left open asks whether there is something new. */
const ASK_AGAIN_MS = 60_000

export const watchesQuery = queryOptions({ queryKey: ['watches', 'list'], queryFn: listWatches })
export const noticesQuery = (limit: number) =>
  queryOptions({ queryKey: ['watches', 'notices', limit], queryFn: () => listNotices(limit), refetchInterval: ASK_AGAIN_MS })
export const noticeCountQuery = queryOptions({ queryKey: ['watches', 'count'], queryFn: countNotices, refetchInterval: ASK_AGAIN_MS })
export const feedLinkQuery = queryOptions({ queryKey: ['watches', 'feed'], queryFn: getFeedLink })
