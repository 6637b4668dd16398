/** A worker that takes everything and never answers. */
export class SilentWorker {
  onmessage = null
  onerror = null
  postMessage(): void {}
  terminate(): void {}
}
