import { newId } from '../post/new-id.ts'
import { useDesk } from './desk-context.ts'
import { focusHead } from './desk-focus.ts'

/** Copies a build behind the last one, chooses the copy and puts the focus on it. */
export function useCopyBuild(): (buildId: string) => void {
  const { state, edit, choose } = useDesk()
  return (buildId) => {
    const build = state.draft.builds.find((one) => one.id === buildId)
    if (!build) return
    const id = newId()
    edit({ do: 'duplicate_build', buildId, newId: id, lineIds: build.lines.map(() => newId()) })
    choose(id)
    focusHead(id)
  }
}
