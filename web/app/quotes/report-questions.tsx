import type { ReactElement } from 'react'
import type { OpenQuestion } from '../../../core/sizing/report.ts'
import { sayBearsOn } from '../../../core/sizing/range-words.ts'
import { Button } from '../parts/button.tsx'
import { useDesk } from './desk-context.ts'

/** The questions whose answers would settle or change most, each leading to where it is answered. */
export function ReportQuestions({ questions }: { questions: readonly OpenQuestion[] }): ReactElement | null {
  const { chosen, locked, open, ask } = useDesk()
  if (questions.length === 0) return null
  const answer = ({ place }: OpenQuestion): void => {
    if (place.at === 'slot') open({ at: 'cell', buildId: chosen.id, slot: place.slot, want: null })
    else if (place.field !== 'assumed' && place.field !== 'livestock') ask(place.field)
  }
  return (
    <div className="questions">
      <h3>{questions.length === 1 ? 'Ask this next' : 'Ask these next'}</h3>
      <ol>
        {questions.map((question) => (
          <li key={question.text}>
            {locked ? (
              <span>{question.text}</span>
            ) : (
              <Button look="plain" onClick={() => answer(question)}>
                {question.text}
              </Button>
            )}
            <span className="note">would settle or change: {sayBearsOn(question)}</span>
          </li>
        ))}
      </ol>
    </div>
  )
}
