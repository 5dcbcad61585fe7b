import { useQueries } from '@tanstack/react-query'
import { addDays } from '../../../core/dates.ts'
import { byDateOf, outlookLines } from '../../../core/pricing/by-date.ts'
import { MOST_AHEAD_DAYS } from '../../../core/pricing/outlook-view.ts'
import { cheaperElsewhere } from '../../../core/quote/cheaper-elsewhere.ts'
import { discountOf } from '../../../core/quote/quote-market.ts'
import { adviceOf, type ExpectedBuild as Told } from '../../../core/pricing/line-advice.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'
import { getOutlook } from '../client/outlook.ts'
import { useDesk } from './desk-context.ts'

/** `byDate` is null and `advice` empty where nothing was asked, answered yet, or can be said. */
export interface ExpectedBuild extends Told {
  /** An answer is under way. */
  busy: boolean
  /** The server was asked and has learnt nothing yet, or knows too little. */
  unknown: boolean
  /** The server could not be asked. */
  failed: boolean
}

/** What each build is expected to come to by the day of the need. Asked of the server, which keeps what the record taught; by the build's id. */
export function useByDates(builds: readonly WorkedBuild[]): ReadonlyMap<string, ExpectedBuild> {
  const { state, inputs } = useDesk()
  const { byDate: until, weekWaitMinor } = state.draft.need
  const isAsked =
    until !== null && until >= inputs.asOf && until <= addDays(inputs.asOf, MOST_AHEAD_DAYS) && state.view.install.mode === 'club'
  const asked = builds.map(({ cost }) => outlookLines(cost))
  const answers = useQueries({
    queries: asked.map((lines) => ({
      queryKey: ['by-date', until, weekWaitMinor, lines],
      queryFn: () => getOutlook({ lines, storeIds: [], until: until ?? '', weekWaitMinor: weekWaitMinor ?? 0, withTax: true }),
      enabled: isAsked && lines.length > 0,
      staleTime: 5 * 60_000,
    })),
  })
  const elsewhereOf = cheaperElsewhere(inputs)
  return new Map(
    builds.map((build, index): [string, ExpectedBuild] => {
      const answer = answers[index]
      const outlook = isAsked && asked[index]?.length !== 0 ? answer?.data : undefined
      const byDate = outlook ? byDateOf(build.cost, outlook, discountOf(inputs)) : null
      return [
        build.id,
        {
          byDate,
          advice: outlook ? adviceOf(build.cost, outlook, elsewhereOf) : [],
          busy: answer?.isFetching === true,
          failed: answer?.isError === true,
          unknown: answer?.isError === true || (outlook !== undefined && byDate === null),
        },
      ]
    }),
  )
}
