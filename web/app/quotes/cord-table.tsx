import type { ReactElement } from 'react'
import { cordRows } from '../../../core/explanation/cord-rows.ts'
import { sizedSubject } from '../../../core/quote/worked-build.ts'
import { sayPhrase } from '../../../core/units/say.ts'
import { Verdict } from '../parts/verdict.tsx'
import { useDesk } from './desk-context.ts'

/** Every cord with the reach that its loop wants and the cord that there is. */
export function CordTable(): ReactElement {
  const { inputs, chosen, reader } = useDesk()
  const subject = sizedSubject(
    inputs,
    inputs.draft.builds.findIndex(({ id }) => id === chosen.id),
  )
  const rows = subject ? cordRows(subject) : []
  return (
    <ul className="cord-rows" aria-label="Cords">
      {rows.map(({ name, verdict, wanted, has }, index) => (
        <li key={`${name}-${index}`}>
          <span className="cord-of">{name}</span>
          {verdict && <Verdict verdict={verdict} words={verdict === 'fits' ? 'reaches' : undefined} />}
          <span className="reach">
            wants <b>{wanted ? sayPhrase(wanted, reader) : 'room for a loop'}</b>, has {sayPhrase(has, reader)}
          </span>
        </li>
      ))}
    </ul>
  )
}
