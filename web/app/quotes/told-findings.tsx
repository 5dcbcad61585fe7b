import type { ReactElement } from 'react'
import { Button } from '../parts/button.tsx'
import { plotsByFinding } from '../../plots/plot-of-finding.ts'
import { useDesk } from './desk-context.ts'
import { FindingCard } from './finding-card.tsx'
import { FindingDrawing } from './finding-drawing.tsx'
import { FitRows } from './fit-rows.tsx'
import { ReportQuestions } from './report-questions.tsx'
import { needsTank } from './slot-findings.ts'
import { useDrawnFigures } from './use-drawn-figures.ts'
import { useToldReport } from './use-told-report.ts'

/** What to ask next, then the findings of the chosen build with their ranges and what they rest on. */
export function ToldFindings(): ReactElement {
  const { chosen } = useDesk()
  const report = useToldReport()
  const tankless = chosen.drawing === null
  const findings = tankless ? report.findings.filter((finding) => !needsTank(finding)) : report.findings
  const worse = findings.filter((finding) => finding.verdict !== 'fits' || finding.wording !== undefined)
  // Once for all drawings that stand open: they are reckoned anew at every answer.
  const figures = useDrawnFigures()
  const plots = plotsByFinding(findings, figures)
  const fitPlots = [...plots].flatMap(([finding, plot]) => (worse.includes(finding) ? [] : [plot]))
  return (
    <>
      {tankless ? <ChooseTank /> : <ReportQuestions questions={report.questions ?? []} />}
      <ol>
        {worse.map((finding) => (
          <li key={`${finding.check}-${finding.title}`} className="finding">
            <FindingCard finding={finding} plot={plots.get(finding)} figures={figures} />
          </li>
        ))}
      </ol>
      <FitRows fits={findings.filter((finding) => !worse.includes(finding))} />
      {fitPlots.length > 0 && (
        <div className="fit-drawings">
          {fitPlots.map((plot) => (
            <FindingDrawing key={plot} plot={plot} figures={figures} />
          ))}
        </div>
      )}
    </>
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
