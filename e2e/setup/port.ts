/** Port of the built app under test: not the one of `npm start`, so that both can run. `E2E_PORT` sets another. */
export const PORT = Number(process.env.E2E_PORT ?? 4174)
