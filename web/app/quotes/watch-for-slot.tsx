import { Link, useParams } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import type { Kind } from '../../../core/catalog/kinds.ts'
import { SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'
import { spellSpecFilter } from '../../../core/catalog/spec-filter.ts'
import type { BuildLetter } from '../../../core/quote/draft.ts'
import type { Want } from './meets-want.ts'

/** What a finding asks for, as a filter; what makers of the kind do not state is left out. @example specOf('heater', { minimum: { powerW: 200 }, … }) // 'powerW:200..' */
export function specOf(kind: Kind, want: Want | null): string {
  const stated = new Set(SPEC_FIELDS[kind].map(({ key }) => key))
  const asked = Object.entries(want?.minimum ?? {}).filter(([key]) => stated.has(key))
  return spellSpecFilter(asked.map(([key, least]) => ({ key, least, most: null })))
}

/** To a watch of anything of this kind that fits this build: for what is too dear today. */
export function WatchForSlot({ kind, spec, letter }: { kind: Kind; spec: string; letter: BuildLetter }): ReactElement {
  const { quoteId } = useParams({ from: '/quotes/$quoteId' })
  return (
    <p className="note">
      Nothing at the right price?{' '}
      <Link to="/watches" search={{ kind, ...(spec ? { spec } : {}), quote: quoteId, letter }}>
        Watch for one that fits build {letter}
      </Link>
    </p>
  )
}
