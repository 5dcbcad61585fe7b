import { kindInText, type Kind } from '../../../core/catalog/kinds.ts'
import { DATA_SET_NAMES, DATA_SETS, EXPORT_SETS, type DataSet, type ExportSet } from '../../../core/exchange/data-set.ts'

export const SET_OPTIONS: ReadonlyArray<{ value: DataSet; label: string }> = DATA_SETS.map((value) => ({
  value,
  label: DATA_SET_NAMES[value],
}))

export const EXPORT_OPTIONS: ReadonlyArray<{ value: ExportSet; label: string }> = EXPORT_SETS.map((value) => ({
  value,
  label: DATA_SET_NAMES[value],
}))

/** What a file is called in a sentence. @example setWords('catalog', 'heater') // 'heater' */
export const setWords = (set: ExportSet, kind: Kind | null): string =>
  kind !== null
    ? kindInText(kind)
    : set === 'catalog'
      ? 'the whole catalog'
      : set === 'price_list'
        ? 'the price list'
        : DATA_SET_NAMES[set].toLowerCase()
