import type { ReactElement } from 'react'
import type { ToldFinding } from '../../../core/sizing/finding.ts'
import { sayPhrase, sayQuantity } from '../../../core/units/say.ts'
import { Verdict } from '../parts/verdict.tsx'
import { CordTable } from './cord-table.tsx'
import { useDesk } from './desk-context.ts'
import { Uncertain } from './finding-card.tsx'
import { HowReckoned } from './how-reckoned.tsx'
import { sayLimit } from '../../../core/explanation/limit-words.ts'

const COUNT_WORDS = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten', 'Eleven', 'Twelve']

/** Findings that fit, one row each: its reason and what it rests on are a press away. */
export function FitRows({ fits }: { fits: readonly ToldFinding[] }): ReactElement | null {
  if (fits.length === 0) return null
  return (
    <>
      <div className="okhead">
        <h3>
          {COUNT_WORDS[fits.length] ?? fits.length} {fits.length === 1 ? 'check' : 'checks'}
        </h3>
        <Verdict verdict="fits" words={fits.length === 1 ? 'fits' : 'fit'} />
      </div>
      <ul className="ok" aria-label="Checks that fit">
        {fits.map((finding) => (
          <li key={`${finding.check}-${finding.title}`}>
            <FitRow finding={finding} />
          </li>
        ))}
      </ul>
    </>
  )
}

function FitRow({ finding }: { finding: ToldFinding }): ReactElement {
  const { reader } = useDesk()
  const { title, value, limit, assumed, reason, action, caution } = finding
  return (
    <details>
      <summary>
        <span className="what">
          {title}
          {assumed.length > 0 && <span className="assumed"> assumed</span>}
        </span>
        {(value || limit) && (
          <span className="read">
            {value && <b>{sayQuantity(value, reader)}</b>} {limit && <span className="quiet">{sayLimit(limit, reader)}</span>}
          </span>
        )}
      </summary>
      <p>{sayPhrase(reason, reader)}</p>
      {action && <p className="action">{sayPhrase(action.text, reader)}</p>}
      {finding.check === 'cord_length' && <CordTable />}
      <Uncertain finding={finding} />
      {caution && <p className="note caution">{caution}</p>}
      <HowReckoned finding={finding} />
    </details>
  )
}
