import type { ReactElement } from 'react'
import { SelectField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { useDesk } from './desk-context.ts'

/** Which build is marked "we suggest", and why: the sentence the customer reads under it. */
export function SuggestionPanel(): ReactElement {
  const { state, builds, edit, locked } = useDesk()
  const { suggestion } = state.draft
  const options = builds.map((build) => ({ value: build.id, label: `${build.letter} ${build.name}`.trim() }))
  return (
    <section className="suggestion" aria-labelledby="suggestion-heading">
      <h2 id="suggestion-heading">We suggest</h2>
      <fieldset className="form-row held" disabled={locked}>
        <legend className="sr">Suggestion</legend>
        <SelectField
          label="Build"
          value={suggestion?.buildId ?? ''}
          none="none"
          options={options}
          onChange={(buildId) => edit({ do: 'suggest', suggestion: buildId === '' ? null : { buildId, reason: suggestion?.reason ?? '' } })}
        />
        {suggestion && (
          <TextField
            label="Because"
            value={suggestion.reason}
            maxLength={500}
            onChange={(reason) => edit({ do: 'suggest', suggestion: { buildId: suggestion.buildId, reason } })}
          />
        )}
      </fieldset>
    </section>
  )
}
