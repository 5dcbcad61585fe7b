import type { WatchView } from '../../../core/pricing/watches/watch.ts'
import type { Notice } from '../../../core/pricing/watches/notice.ts'
import { watchRound } from '../../../api/watches/watch-round.ts'
import { phoneId } from '../../support/rows.ts'
import type { Answer, Browser, World } from './world.ts'

export const setWatch = (who: Browser, fields: object): Promise<Answer<WatchView>> =>
  who.send<WatchView>('POST', '/api/watches', { body: { id: phoneId(), limitMinor: 3600, ...fields } })

/** Everything that waits to be looked at is. */
export const lookNow = (world: World): Promise<number> => watchRound(world.db, world.deps.clock(), world.deps.log)

export const toldTo = async (who: Browser): Promise<Notice[]> =>
  (await who.send<{ items: Notice[] }>('GET', '/api/notices?limit=200')).body.items
