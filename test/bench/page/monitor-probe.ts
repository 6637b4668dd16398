/** What passed the probe since it last told. */
export interface ProbeReport {
  readonly wrong: number
  readonly peak: number
  readonly largestStep: number
}

/** Runs on the audio thread, so that nothing is missed however busy the page is. */
const PROBE_MODULE = `
registerProcessor('probe', class extends AudioWorkletProcessor {
  wrong = 0
  peak = 0
  largestStep = 0
  frames = 0
  last = [0, 0]
  process([channels], [output]) {
    channels.forEach((samples, c) => {
      output[c]?.set(samples)
      let last = this.last[c] ?? 0
      for (const sample of samples) {
        if (!Number.isFinite(sample)) this.wrong++
        this.peak = Math.max(this.peak, Math.abs(sample))
        this.largestStep = Math.max(this.largestStep, Math.abs(sample - last))
        last = sample
      }
      this.last[c] = last
    })
    this.frames += 128
    if (this.frames < 48000) return true
    const { wrong, peak, largestStep } = this
    this.port.postMessage({ wrong, peak, largestStep })
    this.frames = this.wrong = this.peak = this.largestStep = 0
    return true
  }
})`

/** Puts a probe between two nodes, which tells of what passes it about once a second. */
export async function monitorProbe(
  context: AudioContext,
  from: AudioNode,
  to: AudioNode,
  onReport: (report: ProbeReport) => void,
): Promise<void> {
  await context.audioWorklet.addModule(`data:text/javascript,${encodeURIComponent(PROBE_MODULE)}`)
  const probe = new AudioWorkletNode(context, 'probe', { outputChannelCount: [2] })
  probe.port.onmessage = ({ data }: MessageEvent<ProbeReport>) => onReport(data)
  from.connect(probe).connect(to)
}
