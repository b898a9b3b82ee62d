import { assessRecording, pianoAfter } from './assess-recording.ts';
import type { FoundAttempt } from './assess-recording.ts';
import type { AssessOptions } from './assess.ts';
import { createListener } from './listen/index.ts';
import type { AudioFinding, Listener, PianoProfile } from './listen/index.ts';
import { heardIn } from './sorting/index.ts';

/** What a section came to, on the clock of the whole recording. */
export interface Section {
  readonly attempts: readonly FoundAttempt[];
  /** nothing before it is needed any more, seconds */
  readonly endSec: number;
}

/** A recording of any length that is listened to while it comes, in bounded memory. */
export interface SectionListener {
  /** one Float32Array a channel, all of one length; kept for some seconds */
  push(block: readonly Float32Array[]): void;
  /** Hands the last section to the taker; the length of it all, and what was found of the sound in the first section. */
  finish(): { readonly durationSec: number; readonly findings: readonly AudioFinding[] };
}

/** How a recording is parted. */
export interface SectionOptions {
  /**
   * So long a section is at least, seconds. A quarter of an hour of sound, kept for the second listening, takes 80 MB. Attempts
   * of one section are told by each other, and a later section knows the piano of the earlier ones.
   */
  readonly sectionSec: number;
}
export const SECTION_DEFAULTS: SectionOptions = { sectionSec: 15 * 60 };

/** A section ends in a pause, and the longer it has become, the shorter a pause will do, seconds. Twice as long it ends anywhere. */
const PAUSES: readonly { readonly afterSections: number; readonly pauseSec: number }[] = [
  { afterSections: 2, pauseSec: 0 },
  { afterSections: 5 / 3, pauseSec: 2.5 },
  { afterSections: 4 / 3, pauseSec: 4 },
  { afterSections: 1, pauseSec: 6 },
];
/**
 * A note is told at the latest so long after it sounded, seconds: what comes up to 3 s later weighs in (listen/transcribe/settle.ts) and is
 * heard some 2 s after it came. Of the test beside this all that was struck is told after 2.7, and a syllable after 4.9.
 */
const TOLD_AFTER_SEC = 5.5;
/** The pause is cut so far into it: the last notes before it ring on. */
const RINGING_SHARE = 0.7;
/** between two looks for a pause, seconds of sound */
const LOOK_EACH_SEC = 1;
/** Of what was pushed so much is kept, to begin the next section with. */
const KEPT_SEC = TOLD_AFTER_SEC + (1 - RINGING_SHARE) * 6 + LOOK_EACH_SEC;

/**
 * Opens a listening for a recording of any length: it is cut in pauses into sections of a quarter to half an hour, each sorted as
 * `assessRecording` does it and handed to `take`. A recording of up to a quarter of an hour is one section. Nothing throws but
 * what `createListener` throws.
 */
export function listenInSections(
  format: { readonly sampleRateHz: number; readonly channels: number },
  take: (section: Section) => void,
  options: Partial<AssessOptions & SectionOptions> = {},
): SectionListener {
  const { sampleRateHz } = format;
  const { sectionSec } = { ...SECTION_DEFAULTS, ...options };
  let piano: PianoProfile | null = options.piano ?? null;
  let listener: Listener = createListener(format, { piano });
  /** of the section, in samples of the whole recording */
  let from = 0;
  let pushed = 0;
  let lookAt = sectionSec * sampleRateHz;
  let recent: { readonly at: number; readonly block: readonly Float32Array[] }[] = [];
  let findings: readonly AudioFinding[] | null = null;

  const keep = (block: readonly Float32Array[]): void => {
    recent.push({ at: pushed, block });
    pushed += block[0]?.length ?? 0;
    const oldest = pushed - KEPT_SEC * sampleRateHz;
    while (recent[1] !== undefined && recent[1].at <= oldest) recent.shift();
  };

  /** Ends the section there, in samples of the whole recording. */
  const end = (at: number): void => {
    const heard = listener.finish();
    findings ??= heard.findings;
    const startSec = from / sampleRateHz;
    const lengthSec = (at - from) / sampleRateHz;
    const own = at === pushed ? heard : heardIn(heard, { startSec: 0, endSec: lengthSec });
    const attempts = assessRecording(own, listener.sound(), { ...options, piano });
    piano = attempts.reduce((known, { assessment }) => pianoAfter(known, assessment), piano);
    take({
      attempts: attempts.map((one) => ({
        ...one,
        startSec: one.startSec + startSec,
        endSec: one.endSec + startSec,
      })),
      endSec: at / sampleRateHz,
    });
  };

  /** Where the section may end, in samples of the whole recording; null: not in what was heard so far. */
  const pause = (): number | null => {
    const lengthSec = (pushed - from) / sampleRateHz;
    const { pauseSec } = PAUSES.find(({ afterSections }) => lengthSec >= afterSections * sectionSec)!;
    const toldSec = lengthSec - TOLD_AFTER_SEC;
    const lastSec = listener.notesSoFar().at(-1)?.timeSec ?? 0;
    if (pauseSec > 0 && lastSec > toldSec - pauseSec) return null;
    return from + Math.round((toldSec - (1 - RINGING_SHARE) * pauseSec) * sampleRateHz);
  };

  const begin = (at: number): void => {
    const again = recent;
    recent = [];
    from = at;
    pushed = at;
    lookAt = at + sectionSec * sampleRateHz;
    listener = createListener(format, { piano });
    for (const one of again) {
      const skipped = Math.max(at - one.at, 0);
      if (skipped < (one.block[0]?.length ?? 0)) push(one.block.map((channel) => channel.subarray(skipped)));
    }
  };

  const push = (block: readonly Float32Array[]): void => {
    listener.push(block);
    keep(block);
    if (pushed < lookAt) return;
    lookAt = pushed + LOOK_EACH_SEC * sampleRateHz;
    const at = pause();
    if (at === null) return;
    end(at);
    begin(at);
  };

  return {
    // A decoder may give many minutes at once; a pause is looked for in each second of them.
    push: (block) => {
      const length = block[0]?.length ?? 0;
      const step = Math.round(LOOK_EACH_SEC * sampleRateHz);
      for (let start = 0; start < length; start += step)
        push(length <= step ? block : block.map((channel) => channel.subarray(start, start + step)));
    },
    finish: () => {
      end(pushed);
      return { durationSec: pushed / sampleRateHz, findings: findings ?? [] };
    },
  };
}
