import { useEffect, useMemo, useState, type ReactElement } from 'react'
import { resolveConditions } from '../../../core/quote/conditions.ts'
import type { Need } from '../../../core/quote/need.ts'
import { Button } from '../parts/button.tsx'
import { useDesk } from './desk-context.ts'
import { EXACT_FIELDS, EXACT_GROUPS } from './exact-fields.ts'
import { focusExact } from './exact-focus.ts'
import { FirstExactFields, NeedExactFields } from './need-exact-fields.tsx'
import { NeedQuestions } from './need-questions.tsx'
import { needRows, sayExact, type NeedRow } from './need-words.ts'

/** What the customer asked for, with every default marked assumed; changed in place. */
export function NeedPanel(): ReactElement {
  const desk = useDesk()
  const { draft, view } = desk.state
  const { asked, ask } = desk
  const [changing, setChanging] = useState(false)
  const conditions = useMemo(() => resolveConditions(draft.need, view.install), [draft.need, view.install])
  const change = (part: Partial<Omit<Need, 'exact'>>) => desk.edit({ do: 'need', change: part })
  if (asked !== null && !changing) setChanging(true)
  // The form is drawn first; its field takes the focus once it is there.
  useEffect(() => {
    if (asked === null || !changing) return
    focusExact(asked)
    ask(null)
  }, [asked, ask, changing])
  return (
    <section className="need" aria-labelledby="need-heading" data-changing={(changing && !desk.locked) || undefined}>
      <h2 id="need-heading">The need</h2>
      {changing && !desk.locked ? (
        <div className="form need-form">
          <NeedQuestions need={draft.need} stores={view.stores} regions={view.regions} onChange={change} />
          <FirstExactFields need={draft.need} conditions={conditions} onChange={(exact) => desk.edit({ do: 'exact', change: exact })} />
          <details className="exact" open>
            <summary>More exact</summary>
            <NeedExactFields need={draft.need} conditions={conditions} onChange={(exact) => desk.edit({ do: 'exact', change: exact })} />
          </details>
        </div>
      ) : (
        <>
          <Rows rows={needRows(draft.need, conditions, desk.inputs.install, view, view.asOf)} />
          <MoreExact />
        </>
      )}
      {!desk.locked && (
        <p className="need-act">
          <Button small aria-expanded={changing} onClick={() => setChanging(!changing)}>
            {changing ? 'Done with the need' : 'Change the need'}
          </Button>
        </p>
      )}
    </section>
  )
}

function Rows({ rows }: { rows: NeedRow[] }): ReactElement {
  return (
    <dl className="rows">
      {rows.map((row) => (
        <div key={row.label}>
          <dt>{row.label}</dt>
          <dd>
            {row.words}
            {row.assumed && <span className="assumed"> assumed</span>}
          </dd>
        </div>
      ))}
    </dl>
  )
}

/** Folded: room, outlet, tap water and the rest, each default with its word. */
function MoreExact(): ReactElement {
  const { state, reader } = useDesk()
  const { need } = state.draft
  const conditions = resolveConditions(need, state.view.install)
  const assumed = EXACT_FIELDS.filter((field) => sayExact(field, need, conditions, reader).assumed).length
  return (
    <details className="exact">
      <summary>More exact{assumed > 0 && `, ${assumed} assumed`}</summary>
      {EXACT_GROUPS.map((group) => (
        <div key={group.title}>
          <h3>{group.title}</h3>
          <Rows rows={group.fields.map((field) => sayExact(field, need, conditions, reader))} />
        </div>
      ))}
    </details>
  )
}
