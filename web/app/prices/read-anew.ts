import type { QueryClient } from '@tanstack/react-query'

/** After a sighting was posted or voted on: every place that shows it is read again at once, also where it is not on the screen now. */
export async function readPricesAnew(queries: QueryClient): Promise<void> {
  await Promise.all([
    queries.invalidateQueries({ queryKey: ['board'] }),
    // "from …" beside other rows of the board.
    queries.invalidateQueries({ queryKey: ['price-views'] }),
    queries.invalidateQueries({ queryKey: ['record'], refetchType: 'all' }),
  ])
}
