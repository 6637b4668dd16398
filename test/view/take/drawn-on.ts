/** Something that was filled or cleared on a canvas, device pixels. */
export interface DrawnRect {
  readonly does: 'fill' | 'clear'
  readonly canvas: HTMLCanvasElement
  readonly x: number
  readonly width: number
  readonly colour: string
}

/** Gives every canvas, which has none in a test, a context that notes what is drawn. */
export function noteDrawing(): DrawnRect[] {
  const drawn: DrawnRect[] = []
  const contextOf = (canvas: HTMLCanvasElement) => {
    const context = {
      canvas,
      fillStyle: '',
      globalAlpha: 1,
      fillRect: (x: number, _: number, width: number) =>
        drawn.push({ does: 'fill', canvas, x, width, colour: context.fillStyle }),
      clearRect: (x: number, _: number, width: number) =>
        drawn.push({ does: 'clear', canvas, x, width, colour: '' }),
    }
    return context
  }
  Object.defineProperty(HTMLCanvasElement.prototype, 'getContext', {
    configurable: true,
    value(this: HTMLCanvasElement) {
      return contextOf(this)
    },
  })
  return drawn
}
