import { assessRecording, createListener } from '../../engine/index.ts';
import type { FoundAttempt, Heard, Listener, Notice } from '../../engine/index.ts';
import type { DecodedFacts, TakeSound } from '../decode/index.ts';
import { LISTENING_SHARE } from './progress.ts';
import { Tape } from './tape.ts';
import type { FoundInFile, SortedAttempt, SortedFile, SortOptions } from './types.ts';

/** Decodes a recording into the taker that it opens; opened again, it begins anew (another decoder is tried). */
export type DecodeInto = (open: () => TakeSound) => Promise<DecodedFacts>;

/**
 * A recording, listened to while it is decoded → its attempts, each recognised and measured. Holds one channel of the sound,
 * never the decoded samples. Rejects with what `decode` rejects with.
 */
export async function sortSound(
  decode: DecodeInto,
  options: Partial<SortOptions>,
  onProgress: (share: number) => void,
): Promise<SortedFile<FoundInFile>> {
  return (await sorted(decode, options, onProgress, () => null)).file;
}

/** The same, with the sound of each attempt cut out; one channel is held at two rates. */
export async function sortAndCut(
  decode: DecodeInto,
  options: Partial<SortOptions>,
  onProgress: (share: number) => void,
): Promise<SortedFile> {
  const { file, tape } = await sorted(decode, options, onProgress, (format) => new Tape(format));
  tape.finish();
  const cut = (one: FoundInFile): SortedAttempt => ({ ...one, sound: tape.cut(one.startSec, one.endSec) });
  return { ...file, attempts: file.attempts.map(cut) };
}

interface OpenListener<Laid> {
  readonly listener: Listener;
  readonly tape: Laid;
}

async function sorted<Laid extends Tape | null>(
  decode: DecodeInto,
  options: Partial<SortOptions>,
  onProgress: (share: number) => void,
  openTape: (format: { readonly sampleRateHz: number; readonly channels: number }) => Laid,
): Promise<{ readonly file: SortedFile<FoundInFile>; readonly tape: Laid }> {
  const openListener = (sampleRateHz: number, channels: number): OpenListener<Laid> => {
    const format = { sampleRateHz, channels };
    return { listener: createListener(format), tape: openTape(format) };
  };
  const open: { ear?: OpenListener<Laid> } = {};
  const { remarks, sampleRateHz } = await decode(() => {
    delete open.ear;
    return (block, rateHz, share) => {
      open.ear ??= openListener(rateHz, block.length);
      open.ear.listener.push(block);
      open.ear.tape?.push(block);
      onProgress(LISTENING_SHARE * share);
    };
  });
  const { listener, tape } = open.ear ?? openListener(sampleRateHz, 1);
  onProgress(LISTENING_SHARE);
  const heard = listener.finish();
  const attempts = assessRecording(heard, listener.sound(), { ...options, learnHands: true }).map(told);
  onProgress(1);
  const reason = attempts.length > 0 ? '' : why(heard);
  return { file: { durationSec: heard.durationSec, remarks, attempts, reason }, tape };
}

function told({ startSec, endSec, recognition, assessment }: FoundAttempt): FoundInFile {
  const where = { startSec, endSec, recognition };
  if (assessment.kind !== 'report') return { ...where, report: null, reason: assessment.reason };
  const { report, handsAlone: alone = {} } = assessment;
  return { ...where, report, reason: '', ...(Object.keys(alone).length > 0 && { alone }) };
}

function why({ findings }: Heard): Notice {
  return findings[0]?.notice ?? { notice: 'no-notes' };
}
