import { configure } from '@testing-library/react'

// For so long that a busy machine fails no test.
configure({ asyncUtilTimeout: 60_000 })
