import { useState, type ReactElement } from 'react'
import { TickField } from '../parts/choice-fields.tsx'
import { useDesk } from './desk-context.ts'
import { keepSingleKeys, MOVES, readSingleKeys, SHORTCUTS, type Shortcut } from './shortcuts.ts'
import { useShortcuts } from './use-shortcuts.ts'

/** Every key of the desk, always in sight; those of one letter can be switched off, for whoever speaks to the machine or hits keys by chance. */
export function ShortcutPanel(): ReactElement {
  const { builds } = useDesk()
  const [on, setOn] = useState(() => readSingleKeys(localStorage))
  useShortcuts(on)
  const last = builds.at(-1)?.letter ?? 'A'
  const choosing = builds.length > 1 ? [{ key: `A to ${last}`, words: 'choose a build' }] : []
  return (
    <section className="keys" aria-labelledby="keys-heading">
      <h2 id="keys-heading">Keys</h2>
      <KeyRows rows={MOVES} />
      {on && <KeyRows rows={[...choosing, ...SHORTCUTS]} />}
      <TickField
        label="Single letters"
        checked={on}
        onChange={(next) => {
          setOn(next)
          keepSingleKeys(localStorage, next)
        }}
      />
    </section>
  )
}

function KeyRows({ rows }: { rows: readonly Shortcut[] }): ReactElement {
  return (
    <dl className="rows key-rows">
      {rows.map(({ key, words }) => (
        <div key={key}>
          <dt>
            <kbd>{key}</kbd>
          </dt>
          <dd>{words}</dd>
        </div>
      ))}
    </dl>
  )
}
