import { type KeyboardEvent, memo, useMemo, useRef, useState } from 'react'
import { goToFrame } from '../../../session/take/go-to'
import type { Take } from '../../../session/take/take-store'
import { useApp, useListen, useTake } from '../../context/app-context'
import { LaneRow } from '../lanes/lane'
import type { TimeView } from '../time/time-view'
import { groupWords, type MarkGroup, markGroups } from './group-marks'
import styles from './marks-row.module.css'
import { type Mark, type MarkKind, marksOf } from './take-marks'

/** Marks are as far apart as a target is wide, at the usual text size, CSS pixels. */
const LEAST_APART_PX = 24

interface MarksRowProps {
  readonly view: TimeView
  readonly sampleRate: number
  /** CSS pixels. */
  readonly width: number
  readonly height: number
  readonly textScale: number
}

/** Sibilants, clipped samples and the loop's ends, over the wave: pressed, they are gone to. */
export const MarksRow = memo(({ height, ...props }: MarksRowProps) => {
  const take = useTake((state) => state.take)
  return (
    <LaneRow label={null}>
      <div className={styles.row} style={{ height }}>
        {take && <Marks take={take} {...props} />}
      </div>
    </LaneRow>
  )
})

type MarksProps = Omit<MarksRowProps, 'height'> & { readonly take: Take }

function Marks({ take, view, sampleRate, width, textScale }: MarksProps) {
  const app = useApp()
  const loop = useListen((state) => state.loop)
  const marks = useMemo(() => marksOf(take, loop), [take, loop])
  const groups = markGroups(marks, view, width, LEAST_APART_PX * textScale)
  const row = useRef<HTMLDivElement>(null)
  // The one that Tab comes to: where the keys went last.
  const [current, setCurrent] = useState<Mark | null>(null)
  const stop = Math.max(
    0,
    groups.findIndex(({ first }) => first === current),
  )
  const press = (event: KeyboardEvent) => {
    const next = { ArrowRight: stop + 1, ArrowLeft: stop - 1, Home: 0, End: groups.length - 1 }[event.key]
    if (next === undefined) return
    event.preventDefault()
    const buttons = row.current?.querySelectorAll('button')
    buttons?.[Math.min(groups.length - 1, Math.max(0, next))]?.focus()
  }
  if (groups.length === 0) return null
  return (
    <div ref={row} role="toolbar" aria-label="Marks" onKeyDown={press}>
      {groups.map((group, index) => (
        <button
          key={`${group.first.kind} ${group.first.frame}`}
          type="button"
          data-look="bare"
          className={lookOf(group)}
          style={{ left: group.x }}
          tabIndex={index === stop ? 0 : -1}
          title={groupWords(group, sampleRate)}
          aria-label={groupWords(group, sampleRate)}
          onFocus={() => setCurrent(group.first)}
          onClick={() => goToFrame(app, group.first.frame)}
        >
          <Glyphs group={group} />
        </button>
      ))}
    </div>
  )
}

function lookOf({ counts }: MarkGroup): string | undefined {
  if (counts.has('clipped')) return styles.clipped
  const isLoopAlone = !counts.has('sibilant')
  return isLoopAlone ? styles.loop : styles.mark
}

const GLYPHS: Readonly<Record<MarkKind, string>> = {
  sibilant: 'S',
  clipped: '▼',
  'loop-start': '[',
  'loop-end': ']',
}

/** What a group holds, as small as can be read: drawn by the styles, since its name says it in words. */
function Glyphs({ group: { counts } }: { readonly group: MarkGroup }) {
  return Array.from(counts, ([kind, count]) => (
    <span key={kind} data-glyph={count > 1 ? `${GLYPHS[kind]}×${count}` : GLYPHS[kind]} />
  ))
}
