import type { SetupView } from '../../../core/quote/quote-view.ts'
import { request } from './request.ts'

/** Every setup of this install. */
export const listSetups = async (): Promise<SetupView[]> => (await request<{ items: SetupView[] }>('GET', '/api/setups')).items
