import type { SetupView } from '../../../core/quote/quote-view.ts'
import { request } from './request.ts'

/** Every setup of this install. */
export async function listSetups(): Promise<SetupView[]> {
  const answer = await request<SetupView[] | { items?: SetupView[]; setups?: SetupView[] }>('GET', '/api/setups')
  return Array.isArray(answer) ? answer : (answer.items ?? answer.setups ?? [])
}
