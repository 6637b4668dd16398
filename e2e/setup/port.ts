/** Port of the built app under test: not the one of `npm start`, so that both can run. `E2E_PORT` sets another. */
export const PORT = Number(process.env.E2E_PORT ?? 4174)

/** Where the built app is served to the tests. */
export const ORIGIN = `http://127.0.0.1:${PORT}`
