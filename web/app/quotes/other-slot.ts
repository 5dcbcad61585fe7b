import { SLOT_OF, type Slot } from '../../../core/catalog/kinds.ts'
import { kindsMeant } from '../../../core/catalog/kind-words.ts'

/**
 * The slot of the kind that the words name, where it is another than the one that is looked in; undefined where they may mean this one, or none.
 *
 * @example otherSlot('sump', 'filter') // 'sump'
 */
export function otherSlot(words: string, slot: Slot): Slot | undefined {
  const slots = words
    .split(/\s+/)
    .flatMap((word) => (word === '' ? [] : kindsMeant(word).map((kind) => (kind === 'kit' ? 'hold_water' : SLOT_OF[kind]))))
  return slots.includes(slot) ? undefined : slots[0]
}
