import type { JSHandle } from '@playwright/test'

/** Brings samples out of the page, as text of their bytes: as numbers they would take several times as long. */
export async function bringOut(
  blocks: JSHandle<readonly Float32Array<ArrayBuffer>[]>,
): Promise<Float32Array> {
  const url = await blocks.evaluate(
    (parts) =>
      new Promise<string>((resolve, reject) => {
        const reader = new FileReader()
        reader.onload = () => resolve(String(reader.result))
        reader.onerror = () => reject(reader.error)
        reader.readAsDataURL(new Blob([...parts]))
      }),
  )
  await blocks.dispose()
  const bytes = Uint8Array.from(Buffer.from(url.slice(url.indexOf(',') + 1), 'base64'))
  return new Float32Array(bytes.buffer)
}
