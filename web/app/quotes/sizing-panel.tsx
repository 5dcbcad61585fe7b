import type { ReactElement } from 'react'
import { late } from '../parts/late.tsx'
import { useDesk } from './desk-context.ts'

/** Ranges, questions, sources and cautions come with it, and come as soon as the desk is there: from then on it reads without a signal as well. */
const ToldFindings = late('the report', async () => (await import('./told-findings.tsx')).ToldFindings)

/** The chosen build's sizing report, worst first, worked out in this browser at every edit. */
export function SizingPanel(): ReactElement {
  const { chosen } = useDesk()
  const tankless = chosen.drawing === null
  return (
    <section className="report" id="sizing" aria-labelledby="sizing-heading" tabIndex={-1}>
      <h2 id="sizing-heading">Sizing report for {chosen.letter}</h2>
      <p className="quiet">
        {tankless ? 'No tank is chosen yet. Begin with it: everything else is checked against it.' : 'Worst first. Checked at every edit.'}
      </p>
      <ToldFindings />
      <p className="note end">
        Water, glass, mains electricity, floors and heavy lifting can hurt. The makers’ instructions and the local electrical and building
        code come first; in doubt, ask a licensed electrician or structural engineer.
      </p>
    </section>
  )
}
