/** Columns of a canvas that were drawn anew, device pixels, and what they show then. */
export interface DrawnPart {
  readonly x: number
  readonly width: number
  /** The colour that was painted before the pixels were first taken. */
  readonly colour: string
  /** 0 to 255, for each pixel of one row of the part. */
  row(y: number): number[]
}

/** Gives every canvas, which has none in a test, a context that notes what is drawn. */
export function noteDrawing(): DrawnPart[] {
  const drawn: DrawnPart[] = []
  Object.defineProperty(HTMLCanvasElement.prototype, 'getContext', {
    configurable: true,
    value(this: HTMLCanvasElement) {
      return {
        fillStyle: '',
        fillRect() {},
        getImageData: (_x: number, _y: number, width: number, height: number) => ({
          data: new Uint8ClampedArray(width * height * 4).fill(255),
          width,
          height,
        }),
        putImageData(image: ImageData, _x: number, _y: number, x: number, _top: number, width: number) {
          const { data, width: imageWidth } = image
          const pixels = data.slice()
          const opacity = (column: number, y: number) =>
            pixels[(y * imageWidth + column) * 4 + 3] ?? Number.NaN
          const row = (y: number) => Array.from({ length: width }, (_, i) => opacity(x + i, y))
          drawn.push({ x, width, colour: this.fillStyle, row })
        },
      }
    },
  })
  return drawn
}
