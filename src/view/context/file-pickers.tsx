import { type ChangeEvent, createContext, type ReactNode, useContext, useMemo, useRef } from 'react'
import { useApp } from './app-context'
import { ACCEPTED_FILES } from './assign-files'

interface Pickers {
  chooseTake(): void
  chooseBacking(): void
}

const PickersContext = createContext<Pickers | null>(null)

/** Opens the browser's file chooser for a take or a backing. */
export function useFilePickers(): Pickers {
  const pickers = useContext(PickersContext)
  if (!pickers) throw new Error('useFilePickers outside FilePickers')
  return pickers
}

/** Holds the two file inputs, so that buttons and keys anywhere inside can open them. */
export function FilePickers({ children }: { children: ReactNode }) {
  const { takes } = useApp()
  const take = useRef<HTMLInputElement>(null)
  const backing = useRef<HTMLInputElement>(null)
  const pickers = useMemo(
    () => ({ chooseTake: () => take.current?.click(), chooseBacking: () => backing.current?.click() }),
    [],
  )
  const chosen = (open: (file: File) => Promise<unknown>) => (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0]
    // So that choosing the same file again is a change.
    event.target.value = ''
    if (file) void open(file)
  }
  const input = { type: 'file', accept: ACCEPTED_FILES, hidden: true } as const
  return (
    <PickersContext value={pickers}>
      {children}
      <input
        {...input}
        ref={take}
        aria-label="Take file"
        data-role="take"
        onChange={chosen((file) => takes.openTake(file))}
      />
      <input
        {...input}
        ref={backing}
        aria-label="Backing file"
        data-role="backing"
        onChange={chosen((file) => takes.openBacking(file))}
      />
    </PickersContext>
  )
}
