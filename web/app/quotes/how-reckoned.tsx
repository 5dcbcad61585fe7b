import { useState, type ReactElement } from 'react'
import { SOURCE_WORDS, type ToldFinding } from '../../../core/sizing/finding.ts'
import { late } from '../parts/late.tsx'

const Explained = late('how it was reckoned', async () => (await import('./explained.tsx')).Explained)

/** How a finding came about, folded: what kind of rule it is and how much of it is assumed are said without opening it. */
export function HowReckoned({ finding }: { finding: ToldFinding }): ReactElement {
  const [open, setOpen] = useState(false)
  const { assumed, source, title } = finding
  return (
    <details className="grounds" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        How it was reckoned<span className="sr">: {title}</span>
        {assumed.length > 0 && <span className="assumed"> · {assumed.length} assumed</span>}
      </summary>
      {open && <Explained finding={finding} />}
      <p className="note">
        Source ({SOURCE_WORDS[source.tag]}): {source.text.replace(/\.?$/, '')}.
      </p>
    </details>
  )
}
