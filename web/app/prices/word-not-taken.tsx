import type { ReactElement } from 'react'
import { problemOf } from '../client/problem.ts'
import { notTakenWords } from './sighting-words.ts'

/** In the row itself: a vote is not kept for later, and the top of a long list is out of sight. */
export const WordNotTaken = ({ error }: { error: unknown }): ReactElement | null =>
  error ? (
    <span className="fault word-not-taken" role="alert">
      {notTakenWords(problemOf(error))}
    </span>
  ) : null
