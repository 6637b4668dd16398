/** A browser that does not let sound start leaves the request open for ever; a slow output needs a while, ms. */
const RESUME_MS = 3000

export function isRunning(context: AudioContext): boolean {
  return context.state === 'running'
}

/** Has the context run, if the browser lets it. @returns whether it runs */
export async function resumed(context: AudioContext): Promise<boolean> {
  if (!isRunning(context)) {
    const asked = context.resume().catch(() => undefined)
    const late = new Promise<void>((resolve) => setTimeout(resolve, RESUME_MS))
    await Promise.race([asked, late])
  }
  return isRunning(context)
}

/**
 * On phones with a switch for silence, web audio is silent by default, unlike a song that is played: says, where the
 * system asks (Audio Session API, W3C draft), that this is playback.
 */
export function soundInSilentMode(): void {
  const session: unknown = Reflect.get(navigator, 'audioSession')
  if (typeof session === 'object' && session !== null) Reflect.set(session, 'type', 'playback')
}
