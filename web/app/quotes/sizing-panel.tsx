import type { ReactElement } from 'react'
import { Button } from '../parts/button.tsx'
import { plotsByFinding } from '../../plots/plot-of-finding.ts'
import { useDesk } from './desk-context.ts'
import { FindingCard } from './finding-card.tsx'
import { FindingDrawing } from './finding-drawing.tsx'
import { FitRows } from './fit-rows.tsx'
import { ReportQuestions } from './report-questions.tsx'
import { needsTank } from './slot-findings.ts'
import { useRangedReport } from './use-ranged-report.ts'

/** The chosen build's sizing report, worst first, worked out in this browser at every edit. */
export function SizingPanel(): ReactElement {
  const { chosen } = useDesk()
  const report = useRangedReport()
  const tankless = chosen.drawing === null
  const findings = tankless ? report.findings.filter((finding) => !needsTank(finding)) : report.findings
  const worse = findings.filter((finding) => finding.verdict !== 'fits' || finding.wording !== undefined)
  const plots = plotsByFinding(findings, chosen.report.figures)
  const fitPlots = [...plots].flatMap(([finding, plot]) => (worse.includes(finding) ? [] : [plot]))
  return (
    <section className="report" id="sizing" aria-labelledby="sizing-heading" tabIndex={-1}>
      <h2 id="sizing-heading">Sizing report for {chosen.letter}</h2>
      <p className="quiet">{tankless ? 'Without a tank there is little to check.' : 'Worst first. Checked at every edit.'}</p>
      {tankless ? <ChooseTank /> : <ReportQuestions questions={report.questions ?? []} />}
      <ol>
        {worse.map((finding) => (
          <li key={`${finding.check}-${finding.title}`} className="finding">
            <FindingCard finding={finding} plot={plots.get(finding)} />
          </li>
        ))}
      </ol>
      <FitRows fits={findings.filter((finding) => !worse.includes(finding))} />
      {fitPlots.length > 0 && (
        <div className="fit-drawings">
          {fitPlots.map((plot) => (
            <FindingDrawing key={plot} plot={plot} />
          ))}
        </div>
      )}
      <p className="note end">
        Water, glass, mains electricity, floors and heavy lifting can hurt. The makers’ instructions and the local electrical and building
        code come first; in doubt, ask a licensed electrician or structural engineer.
      </p>
    </section>
  )
}

/** One press in place of every check that waits for a tank. */
function ChooseTank(): ReactElement | null {
  const { chosen, open, locked } = useDesk()
  if (locked) return null
  return (
    <p className="do">
      <Button small onClick={() => open({ at: 'cell', buildId: chosen.id, slot: 'hold_water', want: null })}>
        Choose a tank
      </Button>
    </p>
  )
}
