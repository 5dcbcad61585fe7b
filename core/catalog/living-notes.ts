import { phrase, quantity } from '../units/quantity.ts'
import { practice, type NotedProduct, type SpecNote } from './spec-note.ts'

/** Notes of plants, animals and services: what the living ask for, and what a service needs beforehand. */
export function livingNotes(product: NotedProduct): SpecNote[] {
  switch (product.kind) {
    case 'plant':
      return product.spec.co2Needed === true ? [practice('plant-co2', phrase`Asks for CO2.`)] : []
    case 'livestock':
      return animalNotes(product.spec)
    case 'service':
      return product.spec.type === 'drilling'
        ? [practice('service-drilling', phrase`Only annealed glass can be drilled. A toughened pane shatters: ask the tank’s maker first.`)]
        : []
    default:
      return []
  }
}

function animalNotes({ smallestVolumeL, leastTogether, jumps }: Extract<NotedProduct, { kind: 'livestock' }>['spec']): SpecNote[] {
  const notes: SpecNote[] = [practice('livestock-cycled', phrase`Not before the tank is cycled and ready.`)]
  if (smallestVolumeL !== undefined)
    notes.push(practice('livestock-volume', phrase`For a tank of ${quantity(smallestVolumeL, 'L', 0)} or more.`))
  if (leastTogether !== undefined && leastTogether > 1) notes.push(practice('livestock-group', phrase`At least ${leastTogether} together.`))
  if (jumps === true) notes.push(practice('livestock-jumps', phrase`Jumps: keep a lid on.`))
  return notes
}
