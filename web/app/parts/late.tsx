import { lazy, Suspense, type ComponentType, type ReactElement } from 'react'
import { LoadingRows } from './states.tsx'

const NotLoaded = (): ReactElement => (
  <p className="quiet">This part could not be loaded. Load the page again once there is a signal; nothing that is kept here is lost.</p>
)

/**
 * A part of a screen whose program comes when somebody opens it; `what` is told while it does.
 *
 * @example const Changes = late('what changed', async () => (await import('../quotes/changes-panel.tsx')).ChangesPanel)
 */
export function late<Props extends object>(what: string, load: () => Promise<(props: Props) => ReactElement>): ComponentType<Props> {
  const Part = lazy<ComponentType<Props>>(() =>
    load().then(
      (part) => ({ default: part }),
      () => ({ default: NotLoaded }),
    ),
  )
  return function Late(props: Props): ReactElement {
    return (
      <Suspense fallback={<LoadingRows rows={2} what={what} />}>
        <Part {...props} />
      </Suspense>
    )
  }
}
