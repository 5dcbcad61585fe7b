import type { ReactElement } from 'react'
import { isPackSlot } from '../../../core/quote/pack-cover.ts'
import { signOf } from '../../../core/sizing/count-words.ts'
import type { ToldFinding } from '../../../core/sizing/finding.ts'
import { sayRange, sayTurns } from '../../../core/sizing/range-words.ts'
import type { SizingFigures } from '../../../core/sizing/report.ts'
import { sayPhrase, sayQuantity } from '../../../core/units/say.ts'
import type { PlotName } from '../../plots/plot-of-finding.ts'
import { ruleWithPointer } from '../../plots/rule.ts'
import { Button } from '../parts/button.tsx'
import { Svg } from '../parts/svg.tsx'
import { Verdict } from '../parts/verdict.tsx'
import { CordTable } from './cord-table.tsx'
import { useDesk } from './desk-context.ts'
import { FindingDrawing } from './finding-drawing.tsx'
import { HowReckoned } from './how-reckoned.tsx'
import { sayLimit } from '../../../core/explanation/limit-words.ts'
import { kindsFor, sayFind } from './meets-want.ts'
import { PackAction } from './pack-action.tsx'
import { slotOfCheck } from './slot-findings.ts'

const CLASS: Record<ToldFinding['verdict'], string> = {
  does_not_fit: 'not-fit',
  not_known: 'not-known',
  marginal: 'marginal',
  fits: 'fits',
}

/** What was checked, how it came out, the level against its limit, why, what to do, its drawing, and where the rule comes from. */
export function FindingCard({
  finding,
  plot,
  figures,
}: {
  finding: ToldFinding
  plot: PlotName | undefined
  figures: SizingFigures
}): ReactElement {
  const { reader } = useDesk()
  return (
    <>
      <div className="top">
        <h3>{finding.title}</h3>
        <Verdict verdict={signOf(finding)} words={finding.wording} />
      </div>
      <Reading finding={finding} />
      <p>{sayPhrase(finding.reason, reader)}</p>
      {finding.check === 'cord_length' && <CordTable />}
      <Uncertain finding={finding} />
      {finding.action === null && finding.missing.length > 0 && <p>What would settle it: {finding.missing.join(', ')}.</p>}
      <ActionLine finding={finding} />
      {plot && <FindingDrawing plot={plot} figures={figures} />}
      {finding.caution && <p className="note caution">{finding.caution}</p>}
      <HowReckoned finding={finding} />
    </>
  )
}

/** How far what is assumed may take it, and the single answers that would change the verdict. */
export function Uncertain({ finding }: { finding: ToldFinding }): ReactElement | null {
  const { reader } = useDesk()
  const range = sayRange(finding, reader)
  const turns = sayTurns(finding, reader)
  if (range === '' && turns.length === 0) return null
  return (
    <>
      {range !== '' && <p className="note">{range}</p>}
      {turns.length > 0 && <p className="note turns">What would change this: {turns.join(', ')}.</p>}
    </>
  )
}

function Reading({ finding }: { finding: ToldFinding }): ReactElement | null {
  const { reader } = useDesk()
  const { value, limit } = finding
  const verdict = signOf(finding)
  if (!value && !limit) return null
  const rule = verdict === 'not_known' ? '' : ruleWithPointer({ value, limit, verdict }, { width: 132, height: 22 })
  return (
    <div className={`reading ${CLASS[verdict]}`}>
      {rule && <Svg markup={rule} className="lvl" inline />}
      <span className="val">
        <b>{value ? sayQuantity(value, reader) : 'no reading'}</b>
        {limit && <span className="quiet"> {sayLimit(limit, reader)}</span>}
      </span>
    </div>
  )
}

/** What to do: a button that opens the picker on what would settle it, or the slot; else a sentence. */
function ActionLine({ finding }: { finding: ToldFinding }): ReactElement | null {
  const { reader, chosen, open, locked } = useDesk()
  const { action } = finding
  if (!action) return null
  const words = sayPhrase(action.text, reader)
  const slot = action.want?.slot ?? slotOfCheck(finding.check)
  if (!slot || locked) return <p className="action">{words}</p>
  const kind = kindsFor(slot)[0]
  return (
    <div className="do">
      <p className="action">{words}</p>
      {isPackSlot(slot) ? (
        <PackAction slot={slot} want={action.want ?? null} />
      ) : (
        <Button
          small
          onClick={() =>
            open({ at: 'cell', buildId: chosen.id, slot, want: action.want ? { ...action.want, check: finding.check } : null })
          }
        >
          {action.want && kind ? sayFind(kind, action.want.quantity) : 'Open the slot'}
        </Button>
      )}
    </div>
  )
}
