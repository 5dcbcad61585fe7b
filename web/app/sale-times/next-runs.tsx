import { useQuery } from '@tanstack/react-query'
import { useEffect, useState, type ReactElement } from 'react'
import { yearOf, type CivilDate } from '../../../core/dates.ts'
import { sayDays } from '../../../core/pricing/sale-time-words.ts'
import type { SaleTimeBody } from '../client/sale-times.ts'
import { runsQuery } from './sale-times-query.ts'

/** Typing settles for so long before the days are asked for. */
const SETTLED_MS = 500
const SHOWN = 3

/** The next days of what is being entered, so that a slip shows before it is saved. */
export function NextRuns({ body, asOf }: { body: SaleTimeBody; asOf: CivilDate }): ReactElement | null {
  const [settled, setSettled] = useState(body)
  const typed = JSON.stringify(body)
  useEffect(() => {
    const timer = setTimeout(() => setSettled(JSON.parse(typed) as SaleTimeBody), SETTLED_MS)
    return () => clearTimeout(timer)
  }, [typed])
  const { data: runs } = useQuery(runsQuery(settled))
  if (!runs) return null
  const said = runs.slice(0, SHOWN).map((run) => sayDays(run, yearOf(asOf)))
  return (
    <p className="quiet" aria-live="polite">
      {said.length === 0 ? 'Not in the coming year.' : `Next: ${said.join('; ')}${runs.length > SHOWN ? '; …' : '.'}`}
    </p>
  )
}
