import type { Slot } from '../../../core/catalog/kinds.ts'

const cellsOf = (buildId: string): HTMLElement[] => [
  ...document.querySelectorAll<HTMLElement>(`.cell-name[data-build="${CSS.escape(buildId)}"]:enabled`),
]

/** Puts the focus on a slot of a build, where it is shown. */
export function focusSlot(buildId: string, slot: Slot): boolean {
  const cell = cellsOf(buildId).find((one) => one.dataset['slot'] === slot)
  cell?.focus()
  return cell !== undefined
}

/** Puts the focus on a build's head once it is drawn: of a build that was just added, or the chosen one when what had the focus is gone. */
export function focusHead(buildId: string): void {
  requestAnimationFrame(() => document.querySelector<HTMLElement>(`.pick[data-build="${CSS.escape(buildId)}"]`)?.focus())
}

const STEPS: Record<string, { row: number; column: number }> = {
  ArrowDown: { row: 1, column: 0 },
  ArrowUp: { row: -1, column: 0 },
  ArrowRight: { row: 0, column: 1 },
  ArrowLeft: { row: 0, column: -1 },
}

/** Moves from a slot to its neighbour by an arrow key; false where there is none. `builds` are the columns shown, from the left. */
export function moveBetweenSlots(from: HTMLElement, key: string, builds: readonly string[]): boolean {
  const step = STEPS[key]
  const { build, slot } = from.dataset
  if (step === undefined || build === undefined) return false
  if (step.column !== 0) {
    const beside = builds[builds.indexOf(build) + step.column]
    return beside !== undefined && focusSlot(beside, slot as Slot)
  }
  const column = cellsOf(build)
  const next = column[column.indexOf(from) + step.row]
  next?.focus()
  return next !== undefined
}
