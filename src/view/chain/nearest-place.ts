/** Position of an element on the screen. */
export interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/**
 * The place in the chain of a point on the screen: that of the box it is nearest to, boxes in the
 * order of the chain.
 */
export function nearestPlace(boxes: readonly Box[], x: number, y: number): number {
  const distances = boxes.map((box) => {
    const dx = Math.max(box.left - x, 0, x - box.right)
    const dy = Math.max(box.top - y, 0, y - box.bottom)
    return Math.hypot(dx, dy)
  })
  return distances.indexOf(Math.min(...distances))
}
