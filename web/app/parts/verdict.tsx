import type { ReactElement } from 'react'
import { VERDICT_WORDS, type Verdict as VerdictName } from '../../../core/sizing/finding.ts'

const CLASS: Record<VerdictName, string> = { does_not_fit: 'not-fit', not_known: 'not-known', marginal: 'marginal', fits: 'fits' }
const OUTLINE = <rect x=".75" y=".75" width="26.5" height="12.5" rx="6.25" fill="none" stroke="currentColor" strokeWidth="1.5" />
const DRAWN: Record<VerdictName, ReactElement> = {
  fits: (
    <>
      {OUTLINE}
      <path d="M9 1v12M19 1v12" stroke="currentColor" strokeWidth="1.25" />
      <ellipse cx="14" cy="7" rx="3.7" ry="3.4" fill="currentColor" />
    </>
  ),
  marginal: (
    <>
      {OUTLINE}
      <path d="M9 1v12M19 1v2.1M19 10.9V13" stroke="currentColor" strokeWidth="1.25" />
      <ellipse cx="19" cy="7" rx="3.7" ry="3.4" fill="currentColor" />
    </>
  ),
  does_not_fit: (
    <path
      fill="currentColor"
      fillRule="evenodd"
      d="M7 0h14a7 7 0 0 1 0 14H7A7 7 0 0 1 7 0zm14.6 3.4a3.7 3.6 0 1 0 .01 7.2 3.7 3.6 0 0 0-.01-7.2zM8.4 1.2v11.6h1.3V1.2zM15.4 1.2v11.6h1.3V1.2z"
    />
  ),
  not_known: (
    <>
      <rect
        x=".75"
        y=".75"
        width="26.5"
        height="12.5"
        rx="6.25"
        fill="none"
        stroke="currentColor"
        strokeWidth="1.5"
        strokeDasharray="3 2.2"
      />
      <path d="M12.1 5.2c0-1.3.9-2 2-2s2 .8 2 1.8c0 1.6-2 1.6-2 3.1M14.1 9.6v1.3" fill="none" stroke="currentColor" strokeWidth="1.4" />
    </>
  ),
}

/** Vial and word, always both. `words` replaces the verdict's own: the floor has its own three, and a count reads "3 marginal". */
export function Verdict({ verdict, words }: { verdict: VerdictName; words?: string }): ReactElement {
  return (
    <span className={`verdict ${CLASS[verdict]}`}>
      <svg className="vial" viewBox="0 0 28 14" aria-hidden="true" focusable="false">
        {DRAWN[verdict]}
      </svg>
      {words ?? VERDICT_WORDS[verdict]}
    </span>
  )
}
