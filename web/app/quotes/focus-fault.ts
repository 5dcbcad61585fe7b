/** Puts the cursor into the first field of a form that says something is wrong with it, once it is drawn. */
export function focusFault(form: HTMLElement | null): void {
  requestAnimationFrame(() => form?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus())
}
