/** Opens whatever folds a part of the desk away, so that it can be seen and take the focus. */
export function openFolds(place: Element): void {
  for (let fold = place.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null) fold.open = true
}
