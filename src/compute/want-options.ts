import type { Want } from './facts/fact-values'
import type { Priority } from './messages'
