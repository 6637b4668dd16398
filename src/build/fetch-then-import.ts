/**
 * Imports a part of the page once every file of it has been fetched. Stands in for the bundler's own loader.
 *
 * Browsers remember for as long as a page is open that a module did not load, and refuse it from then on without asking
 * the server (HTML standard until 2026, whatwg/html#6768; seen in Chromium 156). What is imported here is in the
 * browser's cache already, so a part that failed can be asked for again.
 *
 * @param importPart the import itself
 * @param files the part's scripts and style sheets, relative to `importerUrl`
 * @throws Error when a file could not be fetched; whatever the part throws while it is evaluated
 */
export async function fetchThenImport<Part>(
  importPart: () => Promise<Part>,
  files: readonly string[],
  importerUrl: string,
): Promise<Part> {
  const urls = files.map((file) => new URL(file, importerUrl).href)
  await Promise.all(urls.map((url) => (url.endsWith('.css') ? applyStyles(url) : fetchScript(url))))
  return importPart()
}

async function fetchScript(url: string): Promise<void> {
  const response = await fetch(url)
  if (!response.ok) throw new Error(`${url}: ${response.status} ${response.statusText}`)
  await response.arrayBuffer()
}

async function applyStyles(url: string): Promise<void> {
  const sheets = [...document.querySelectorAll<HTMLLinkElement>('link[rel="stylesheet"]')]
  if (sheets.some(({ href, sheet }) => href === url && sheet !== null)) return
  const link = document.createElement('link')
  link.rel = 'stylesheet'
  link.href = url
  await new Promise<void>((resolve, reject) => {
    link.onload = () => resolve()
    link.onerror = () => {
      link.remove()
      reject(new Error(`${url}: not loaded`))
    }
    document.head.append(link)
  })
}
