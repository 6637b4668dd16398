import { lazyPart } from './lazy-part'

/** What makes the delivered file, fetched with its sheet. */
export const deliveryMaking = lazyPart('Delivery', () => import('./delivery'))

/** What runs blind trials, fetched with their sheet. */
export const trialRunning = lazyPart('The blind trial', () => import('./trials/trials'))
