import { learnPiano, listenInSections } from '../../engine/index.ts';
import type { FoundAttempt, Heard, Notice, Section } from '../../engine/index.ts';
import type { DecodedFacts, TakeSound } from '../decode/index.ts';
import { LISTENING_SHARE } from './progress.ts';
import { Tape } from './tape.ts';
import type { FoundInFile, SortedAttempt, SortedFile, SortOptions } from './types.ts';

/** Decodes a recording into the taker that it opens; opened again, it begins anew (another decoder is tried). */
export type DecodeInto = (open: () => TakeSound) => Promise<DecodedFacts>;

/**
 * A recording of any length, listened to while it is decoded → its attempts, each recognised and measured. Holds one channel of
 * a part of the sound, never the decoded samples. Rejects with what `decode` rejects with.
 */
export async function sortSound(
  decode: DecodeInto,
  options: Partial<SortOptions>,
  onProgress: (share: number) => void,
): Promise<SortedFile<FoundInFile>> {
  return sorted(decode, options, onProgress, () => ({ tape: null, cut: told }));
}

/** The same, with the sound of each attempt cut out; a part of one channel is held at two rates. */
export async function sortAndCut(
  decode: DecodeInto,
  options: Partial<SortOptions>,
  onProgress: (share: number) => void,
): Promise<SortedFile> {
  return sorted(decode, options, onProgress, (format) => {
    const tape = new Tape(format);
    const cut = (found: FoundAttempt): SortedAttempt => ({
      ...told(found),
      sound: tape.cut(found.startSec, found.endSec),
    });
    return { tape, cut };
  });
}

/** What is laid aside of the sound, and what an attempt comes to with it. */
interface Cutting<Attempt> {
  readonly tape: Tape | null;
  readonly cut: (found: FoundAttempt) => Attempt;
}

async function sorted<Attempt extends FoundInFile>(
  decode: DecodeInto,
  options: Partial<SortOptions>,
  onProgress: (share: number) => void,
  openCutting: (format: { readonly sampleRateHz: number; readonly channels: number }) => Cutting<Attempt>,
): Promise<SortedFile<Attempt>> {
  let attempts: Attempt[] = [];
  const openEar = (sampleRateHz: number, channels: number) => {
    const format = { sampleRateHz, channels };
    const { tape, cut } = openCutting(format);
    attempts = [];
    const take = (section: Section): void => {
      tape?.finish();
      attempts.push(...section.attempts.map(cut));
      tape?.forget(section.endSec);
    };
    return { listener: listenInSections(format, take, { ...options, learnHands: true }), tape };
  };
  const open: { ear?: ReturnType<typeof openEar> } = {};
  const { remarks, sampleRateHz } = await decode(() => {
    delete open.ear;
    return (block, rateHz, share) => {
      open.ear ??= openEar(rateHz, block.length);
      open.ear.tape?.push(block);
      open.ear.listener.push(block);
      onProgress(LISTENING_SHARE * share);
    };
  });
  onProgress(LISTENING_SHARE);
  const { durationSec, findings } = (open.ear ?? openEar(sampleRateHz, 1)).listener.finish();
  onProgress(1);
  return { durationSec, remarks, attempts, reason: attempts.length > 0 ? '' : why(findings) };
}

function told({ startSec, endSec, recognition, assessment }: FoundAttempt): FoundInFile {
  const where = { startSec, endSec, recognition };
  if (assessment.kind !== 'report') return { ...where, report: null, reason: assessment.reason };
  const { heard, report, handsAlone: alone = {} } = assessment;
  const taught = learnPiano(heard);
  return {
    ...where,
    report,
    reason: '',
    ...(Object.keys(alone).length > 0 && { alone }),
    ...(taught !== null && { taught }),
  };
}

function why(findings: Heard['findings']): Notice {
  return findings[0]?.notice ?? { notice: 'no-notes' };
}
