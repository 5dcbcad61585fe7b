import { QueryClientProvider } from '@tanstack/react-query'
import { RouterProvider } from '@tanstack/react-router'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import '../tokens.css'
import './app.css'
import './parts/parts.css'
import { queryClient } from './client/query-client.ts'
import { keepPresses } from './parts/kept-press.ts'
import { applyTheme, readTheme } from './theme.ts'
import { router } from './router.tsx'

applyTheme(readTheme())
keepPresses(document)
const root = document.getElementById('app')
if (!root) throw new Error('The page has no element with id "app"')
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queryClient}>
      <RouterProvider router={router} />
    </QueryClientProvider>
  </StrictMode>,
)
