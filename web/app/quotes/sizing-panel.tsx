import type { ReactElement } from 'react'
import { sayTurns } from '../../../core/sizing/range-words.ts'
import type { SizingReport } from '../../../core/sizing/report.ts'
import { sayQuantity } from '../../../core/units/say.ts'
import { Button } from '../parts/button.tsx'
import { plotsByFinding } from '../../plots/plot-of-finding.ts'
import { Verdict } from '../parts/verdict.tsx'
import { useDesk } from './desk-context.ts'
import { FindingCard } from './finding-card.tsx'
import { FindingDrawing } from './finding-drawing.tsx'
import { ReportQuestions } from './report-questions.tsx'
import { needsTank } from './slot-findings.ts'
import { sayLimit } from './limit-words.ts'
import { useRangedReport } from './use-ranged-report.ts'

const COUNT_WORDS = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten', 'Eleven', 'Twelve']

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
      <FitRows report={report} />
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

/** Findings that fit, one row each. */
function FitRows({ report }: { report: SizingReport }): ReactElement | null {
  const { reader } = useDesk()
  const fits = report.findings.filter((finding) => finding.verdict === 'fits' && finding.wording === undefined)
  if (fits.length === 0) return null
  const turning = fits.filter(({ turns = [] }) => turns.length > 0)
  const assumed = [...new Set(fits.flatMap((finding) => finding.assumed))]
  return (
    <>
      <div className="okhead">
        <h3>
          {COUNT_WORDS[fits.length] ?? fits.length} {fits.length === 1 ? 'check' : 'checks'}
        </h3>
        <Verdict verdict="fits" words={fits.length === 1 ? 'fits' : 'fit'} />
      </div>
      <table className="ok">
        <caption className="sr">Checks that fit</caption>
        <thead className="sr">
          <tr>
            <th scope="col">Check</th>
            <th scope="col">Value</th>
            <th scope="col">Limit</th>
          </tr>
        </thead>
        <tbody>
          {fits.map((finding) => (
            <tr key={`${finding.check}-${finding.title}`}>
              <th scope="row">
                {finding.title}
                {finding.assumed.length > 0 && <span className="assumed"> assumed</span>}
              </th>
              <td className="num">{finding.value ? sayQuantity(finding.value, reader) : ''}</td>
              <td className="lim">{finding.limit ? sayLimit(finding.limit, reader) : ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {turning.length > 0 && (
        <p className="note assumed-in">
          What would change one of these: {turning.map((finding) => `${finding.title}: ${sayTurns(finding, reader).join(', ')}`).join('; ')}
          .
        </p>
      )}
      {assumed.length > 0 && <p className="note assumed-in">Assumed in these: {assumed.join(', ')}.</p>}
    </>
  )
}
