import { NewestOnly } from './newest-only'
import { type Poster, postMoving } from './post-moving'
import { Tracer } from './tracer'
import type { FromTracer, ToTracer } from './tracer-protocol'

type TraceRequest = Extract<ToTracer, { readonly type: 'trace' }>

/** What a worker does that traces lanes. */
export class TracerService {
  private tracer: Tracer | null = null
  private readonly work = new NewestOnly<TraceRequest>(({ id, stages }, { isNewest }) =>
    this.trace(id, stages, isNewest),
  )

  /** @param onError told what should not have happened */
  constructor(
    private readonly asker: Poster<FromTracer>,
    private readonly onError: (error: unknown) => void,
  ) {}

  /** Does, or begins, what it is asked. */
  handle(message: ToTracer): void {
    switch (message.type) {
      case 'ground':
        this.tracer = new Tracer(message.ground)
        break
      case 'leave':
        this.tracer = null
        this.work.drop()
        break
      case 'trace':
        this.work.ask(message)
    }
  }

  private async trace(id: number, stages: TraceRequest['stages'], isNewest: () => boolean): Promise<void> {
    try {
      await this.tracer?.round(stages, isNewest, (traces) => this.post({ type: 'live-traces', id, traces }))
    } catch (error) {
      this.onError(error)
    } finally {
      this.post({ type: 'round-over', id })
    }
  }

  private post(message: FromTracer): void {
    postMoving(this.asker, message)
  }
}
