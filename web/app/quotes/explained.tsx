import { CHECK_TITLES } from '../../../core/sizing/check-titles.ts'
import type { ReactElement } from 'react'
import { explainFinding } from '../../../core/explanation/explain-finding.ts'
import { INPUT_SOURCE_WORDS } from '../../../core/explanation/explanation.ts'
import { sizedSubject } from '../../../core/quote/worked-build.ts'
import type { Finding } from '../../../core/sizing/finding.ts'
import { sayPhrase } from '../../../core/units/say.ts'
import { useDesk } from './desk-context.ts'

/** A finding's formula in words and all that went in. In a file of its own: words that only this needs come when somebody opens it. */
export function Explained({ finding }: { finding: Finding }): ReactElement {
  const { inputs, chosen, reader } = useDesk()
  const subject = sizedSubject(
    inputs,
    inputs.draft.builds.findIndex(({ id }) => id === chosen.id),
  )
  if (subject === undefined) return <></>
  const { formula, inputs: went } = explainFinding(finding, subject, chosen.report.figures)
  return (
    <>
      <p className="formula">{sayPhrase(formula, reader)}</p>
      {went.length > 0 && (
        <dl className="went-in" aria-label={`What went into ${CHECK_TITLES[finding.check]}`}>
          {went.map(({ name, value, from }) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>
                {sayPhrase(value, reader)} <span className="from">{INPUT_SOURCE_WORDS[from]}</span>
              </dd>
            </div>
          ))}
        </dl>
      )}
    </>
  )
}
