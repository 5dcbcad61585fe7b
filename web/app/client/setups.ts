import type { SetupView } from '../../../core/quote/quote-view.ts'
import { request } from './request.ts'

/** Every setup of this install. */
export const listSetups = async (): Promise<SetupView[]> => (await request<{ items: SetupView[] }>('GET', '/api/setups')).items
export const renewSetupLink = (id: string): Promise<{ link: string | null }> => request('POST', `/api/setups/${id}/link`)
