import type { Done, Notice, NoticeAnswer } from '../../../core/pricing/watches/notice.ts'
import type { NewWatch, WatchTerms, WatchView } from '../../../core/pricing/watches/watch.ts'
import { request } from './request.ts'

export interface NoticePage {
  items: Notice[]
  total: number
  notSeen: number
}
export interface FeedLink {
  /** Null: none was made. */
  createdAt: string | null
  /** Told once, when it is made. */
  atom: string | null
  json: string | null
}
export interface Answered {
  notice: Notice
  done: Done
}

export const listWatches = async (): Promise<WatchView[]> => (await request<{ items: WatchView[] }>('GET', '/api/watches')).items
export const createWatch = (body: NewWatch): Promise<WatchView> => request('POST', '/api/watches', { body })
export const updateWatch = ({ id, version }: WatchView, body: WatchTerms): Promise<WatchView> =>
  request('PUT', `/api/watches/${id}`, { body, etag: `"${version}"` })
export const endWatch = (id: string): Promise<null> => request('DELETE', `/api/watches/${id}`)

export const listNotices = (limit: number): Promise<NoticePage> => request('GET', `/api/notices?limit=${limit}`)
export const countNotices = (): Promise<{ total: number; notSeen: number }> => request('GET', '/api/notices/count')
export const markSeen = (upTo: string): Promise<{ total: number; notSeen: number }> =>
  request('POST', '/api/notices/seen', { body: { upTo } })
export const answerNotice = (id: string, answer: NoticeAnswer, sightingId: string): Promise<Answered> =>
  request('POST', `/api/notices/${id}/answer`, { body: { answer, sightingId } })

export const takeBackGone = (id: string): Promise<Notice> => request('DELETE', `/api/notices/${id}/answer`)

export const getFeedLink = (): Promise<FeedLink> => request('GET', '/api/feed-link')
export const makeFeedLink = (): Promise<FeedLink> => request('POST', '/api/feed-link', { body: {} })
export const removeFeedLink = (): Promise<null> => request('DELETE', '/api/feed-link')
