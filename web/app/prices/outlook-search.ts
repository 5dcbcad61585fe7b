import { isCivilDate, type CivilDate } from '../../../core/dates.ts'

/** What a quote asked of one product, as it stands in the address: where it is bought, until when that can wait, and what a week of that is worth. */
export interface OutlookSearch {
  store?: string | undefined
  until?: CivilDate | undefined
  wait?: number | undefined
}

/** Reads it; what is no part of it is left out. */
export function readOutlookSearch({ store, until, wait }: Record<string, unknown>): OutlookSearch {
  return {
    ...(typeof store === 'string' && store !== '' && { store }),
    ...(typeof until === 'string' && isCivilDate(until) && { until }),
    ...(Number.isSafeInteger(wait) && Number(wait) > 0 && { wait: Number(wait) }),
  }
}
