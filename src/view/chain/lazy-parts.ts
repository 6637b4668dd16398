import type { ComponentType } from 'react'
import { type LazyPart, lazyPart } from '../../session/lazy-part'
import type { CardFiguresProps } from './figures/card-figures'
import type { EndFiguresProps } from './figures/end-figures'
import type { ListeningPointProps } from './listening-point'
import type { ChainToolsProps } from './tools/chain-tools'

/** What is drawn and measured on the cards: it comes with the take. */
export const cardFigures: LazyPart<ComponentType<CardFiguresProps>> = lazyPart(
  'The figures of the chain',
  async () => (await import('./figures/card-figures')).CardFigures,
)

/** The mark on the line: without a take nobody listens. */
export const listeningPoint: LazyPart<ComponentType<ListeningPointProps>> = lazyPart(
  'The listening point',
  async () => (await import('./listening-point')).ListeningPoint,
)

/** What is measured at the ends. */
export const endFigures: LazyPart<ComponentType<EndFiguresProps>> = lazyPart(
  'The figures of the chain',
  async () => (await import('./figures/end-figures')).EndFigures,
)

/** What is done with the chain once there is something to hear. */
export const chainTools: LazyPart<ComponentType<ChainToolsProps>> = lazyPart(
  'The tools of the chain',
  async () => (await import('./tools/chain-tools')).ChainTools,
)
