import { assessRecording, createListener } from '../../engine/index.ts';
import type { FoundAttempt, Heard, Listener, ReportOptions } from '../../engine/index.ts';
import type { DecodedFacts, TakeSound } from '../decode/index.ts';
import { Tape } from './tape.ts';
import type { SortedAttempt, SortedFile } from './types.ts';

/** Share of the work that is done when all sound has been decoded and heard; what follows takes the rest. */
const LISTENING_SHARE = 0.9;

/** Decodes a recording into the taker that it opens; opened again, it begins anew (another decoder is tried). */
export type DecodeInto = (open: () => TakeSound) => Promise<DecodedFacts>;

/**
 * A recording, listened to while it is decoded → its attempts, each recognised, measured and cut out. Holds one channel of the
 * sound at two rates, never the decoded samples. Rejects with what `decode` rejects with.
 */
export async function sortSound(
  decode: DecodeInto,
  options: Partial<ReportOptions>,
  onProgress: (share: number) => void,
): Promise<SortedFile> {
  const open: { ear?: Ear } = {};
  const { remarks, sampleRateHz } = await decode(() => {
    delete open.ear;
    return (block, rateHz, share) => {
      open.ear ??= openEar(rateHz, block.length);
      open.ear.listener.push(block);
      open.ear.tape.push(block);
      onProgress(LISTENING_SHARE * share);
    };
  });
  const { listener, tape } = open.ear ?? openEar(sampleRateHz, 1);
  const heard = listener.finish();
  tape.finish();
  const found = assessRecording(heard, listener.sound(), options);
  const attempts = found.map((attempt) => sorted(attempt, tape));
  onProgress(1);
  return { durationSec: heard.durationSec, remarks, attempts, reason: attempts.length > 0 ? '' : why(heard) };
}

interface Ear {
  readonly listener: Listener;
  readonly tape: Tape;
}

function openEar(sampleRateHz: number, channels: number): Ear {
  const format = { sampleRateHz, channels };
  return { listener: createListener(format), tape: new Tape(format) };
}

function sorted({ startSec, endSec, recognition, assessment }: FoundAttempt, tape: Tape): SortedAttempt {
  return {
    startSec,
    endSec,
    recognition,
    report: assessment.kind === 'report' ? assessment.report : null,
    reason: assessment.kind === 'report' ? '' : assessment.reason,
    sound: tape.cut(startSec, endSec),
  };
}

function why({ findings }: Heard): string {
  return findings[0]?.detail ?? 'No piano notes were heard in it.';
}
