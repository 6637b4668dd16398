import { ListeningEngine } from '../engine/listening-engine'
import { LISTEN_PROCESSOR, type ListenOptions, type Report, type ToThread } from '../engine/messages'

/** Meter messages a second: as fast as an eye follows, seldom enough to make little garbage. */
const REPORTS_PER_SECOND = 30

/** Plays a take through both sides of a comparison. Its output is the monitor. */
class ListenProcessor extends AudioWorkletProcessor {
  private readonly take: readonly Float32Array[]
  private readonly engine: ListeningEngine
  private readonly gains = new Float32Array(64)
  private peak = 0
  private framesToReport = 0
  private request = 0

  constructor(options: { processorOptions: ListenOptions; outputChannelCount?: number[] }) {
    super()
    const { channelCount, frames, settings } = options.processorOptions
    this.take = Array.from({ length: channelCount }, () => new Float32Array(frames))
    this.engine = new ListeningEngine(this.take, settings, sampleRate, options.outputChannelCount?.[0] ?? 2)
    this.port.onmessage = (event: MessageEvent<ToThread>) => this.receive(event.data)
  }

  process(_inputs: Float32Array[][], outputs: Float32Array[][]): boolean {
    const output = outputs[0]
    const frames = output?.[0]?.length ?? 0
    if (!output || frames === 0) return true
    this.engine.process(output, frames, this.gains)
    for (let c = 0; c < output.length; c++) {
      const samples = output[c]
      if (samples) for (let n = 0; n < frames; n++) this.peak = Math.max(this.peak, Math.abs(samples[n] ?? 0))
    }
    this.framesToReport -= frames
    if (this.framesToReport <= 0) this.report()
    return true
  }

  private receive(message: ToThread): void {
    switch (message.type) {
      case 'take-part':
        for (const [c, samples] of message.channels.entries()) this.take[c]?.set(samples, message.fromFrame)
        break
      case 'settings':
        this.engine.set(message.settings)
        break
      case 'backing':
        this.engine.setBacking(message.channels ?? [])
        break
      case 'play':
        this.engine.play(message.fromFrame)
        this.request = message.request
        break
      case 'stop':
        this.engine.stop()
        break
      case 'loop':
        this.engine.setLoop(message.loop)
        break
    }
  }

  private report(): void {
    const report: Report = {
      type: 'report',
      request: this.request,
      running: this.engine.running,
      positionFrame: this.engine.positionFrame,
      stageGainsDb: this.gains.subarray(0, this.engine.stageCount).slice(),
      peak: this.peak,
      momentaryLufs: this.engine.momentaryLufs,
    }
    this.port.postMessage(report)
    this.gains.fill(0)
    this.peak = 0
    this.framesToReport = sampleRate / REPORTS_PER_SECOND
  }
}

registerProcessor(LISTEN_PROCESSOR, ListenProcessor)
