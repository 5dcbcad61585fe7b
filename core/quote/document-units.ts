import type { Install } from '../install.ts'
import type { ReaderUnits } from '../units/quantity.ts'
import { inSystem } from '../units/reader.ts'
import type { QuoteDraft } from './draft.ts'

/**
 * The units that a quote is told in, on paper, on its page and on the setup's: the customer's where the desk asked, else the install's own.
 *
 * @example documentUnits({ draft: { …, units: 'metric' }, install }) // { system: 'metric', gallon: 'us', decimal: '.' }
 */
export const documentUnits = ({ draft, install }: { draft: Pick<QuoteDraft, 'units'>; install: Pick<Install, 'units'> }): ReaderUnits =>
  draft.units === undefined || draft.units === install.units.system ? install.units : inSystem(install.units, draft.units)
