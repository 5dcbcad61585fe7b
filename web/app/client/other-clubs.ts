import type { OtherClub, OtherClubRow } from '../../../core/other-clubs/other-club.ts'
import { queryOf, request } from './request.ts'

export interface OtherClubsView {
  publishes: boolean
  address: string
  clubs: OtherClub[]
}
const PATH = '/api/other-clubs'

export const listOtherClubs = (): Promise<OtherClubsView> => request('GET', PATH)
export const setPublishing = (publishes: boolean): Promise<OtherClubsView> => request('PUT', `${PATH}/publishing`, { body: { publishes } })
export const addOtherClub = (address: string): Promise<OtherClubsView> => request('POST', PATH, { body: { address } })
export const readOtherClub = (id: string): Promise<OtherClubsView> => request('POST', `${PATH}/${id}/read`)
export const removeOtherClub = (id: string): Promise<OtherClubsView> => request('DELETE', `${PATH}/${id}`)
export const matchOtherStore = (id: string, key: string, storeId: string | null): Promise<OtherClubsView> =>
  request('PUT', `${PATH}/${id}/stores/${encodeURIComponent(key)}`, { body: { storeId } })

export const listOtherClubPrices = async (productId: string): Promise<OtherClubRow[]> =>
  (await request<{ items: OtherClubRow[] }>('GET', `${PATH}/prices${queryOf({ productId })}`)).items
