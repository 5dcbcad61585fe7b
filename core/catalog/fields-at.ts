import type { ChoiceField } from '../fields.ts'
import type { LivestockGroup } from '../sizing/conditions.ts'
import { groupsOf } from './livestock.ts'

type Place = { livestock?: readonly LivestockGroup[] | undefined }

/**
 * What a choice may be at a place: of livestock groups those that it has, its own among them, under the names that it gives them.
 *
 * @example optionsAt(groupField, { livestock: [{ id: 'own-1', name: 'Pond fish', … }] }).at(-1) // { value: 'own-1', label: 'Pond fish' }
 */
export const optionsAt = (field: ChoiceField, place: Place): ReadonlyArray<{ value: string; label: string }> =>
  field.open === true ? groupsOf(place).map(({ id, name }) => ({ value: id, label: name })) : field.options
