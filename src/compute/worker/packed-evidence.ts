import type { Trace } from '../../core'
import type { Evidence, SideEvidence, StageEvidence } from '../evidence/evidence'
import { ReceivedParts, SentParts } from './parts'
import type { PackedEvidence } from './protocol'

/** Evidence without what whoever asked for it knows. */
export type UnpackedEvidence = Omit<Evidence, 'chains'>

/** Packs one piece of evidence after another. */
export class EvidencePacker {
  private readonly sides = new SentParts<SideEvidence>()
  private readonly traces = new SentParts<Trace>()

  pack(evidence: UnpackedEvidence): PackedEvidence {
    const stages = [...evidence.stages]
    return {
      sides: this.sides.pack([evidence.bypassed, evidence.processed]),
      stages: stages.map(([id, { loudnessChangeLu, reduction, trace }]) => ({
        id,
        loudnessChangeLu,
        reduction,
        hasTrace: trace !== null,
      })),
      traces: this.traces.pack(stages.flatMap(([, { trace }]) => (trace ? [trace] : []))),
      matching: evidence.matching,
    }
  }
}

/** Unpacks what an {@link EvidencePacker} packed: all of it, in order. What was not sent again is the same object. */
export class EvidenceUnpacker {
  private readonly sides = new ReceivedParts<SideEvidence>()
  private readonly traces = new ReceivedParts<Trace>()

  unpack(packed: PackedEvidence): UnpackedEvidence {
    const [bypassed, processed] = this.sides.unpack(packed.sides)
    if (!bypassed || !processed) throw new RangeError('evidence of fewer than two sides')
    const traces = this.traces.unpack(packed.traces).values()
    const stages = new Map<string, StageEvidence>()
    for (const { id, hasTrace, ...stage } of packed.stages) {
      stages.set(id, { ...stage, trace: hasTrace ? (traces.next().value ?? null) : null })
    }
    return { bypassed, processed: processed, stages, matching: packed.matching }
  }
}
