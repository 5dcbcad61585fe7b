import type { ReactElement } from 'react'
import { SelectField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { useDesk } from './desk-context.ts'
import { REASON_ID, useSuggest } from './use-suggest.ts'

/** Which build is marked "we suggest", and why: the sentence the customer reads under it. */
export function SuggestionPanel(): ReactElement {
  const { state, builds, edit, locked } = useDesk()
  const suggest = useSuggest()
  const { suggestion } = state.draft
  const options = builds
    .filter((build) => build.drawing !== null || build.id === suggestion?.buildId)
    .map((build) => ({ value: build.id, label: `${build.letter} ${build.name}`.trim() }))
  const withoutTank = builds.filter((build) => build.drawing === null).map(({ letter }) => letter)
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
          help={withoutTank.length > 0 && `Without a tank, so not to be suggested yet: ${withoutTank.join(', ')}.`}
          onChange={(buildId) => (buildId === '' ? edit({ do: 'suggest', suggestion: null }) : suggest(buildId))}
        />
        {suggestion && (
          <div data-quote-field="suggestion.reason">
            <TextField
              label="Because"
              className={REASON_ID}
              help="The customer reads it on the first page. Begun from the figures; write over it."
              value={suggestion.reason}
              maxLength={500}
              onChange={(reason) => edit({ do: 'suggest', suggestion: { buildId: suggestion.buildId, reason } })}
            />
          </div>
        )}
      </fieldset>
    </section>
  )
}
