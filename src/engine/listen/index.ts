export { ChannelChooser, levelsAreCut } from './audio/index.ts';
export { learnPiano, mergeHands, mergePianos } from './piano/index.ts';
export type * from './piano/types.ts';
export type * from './types.ts';
export { pedalHeld } from './partials/pedal.ts';
import {
  Anchor,
  createAudioStream,
  KeptSamples,
  LoudnessWatch,
  RATE_HZ,
  SampleHistory,
} from './audio/index.ts';
import { describeSound } from './findings.ts';
import { HumWatch } from './hum.ts';
import { findPassages } from './passages/index.ts';
import type { PianoProfile } from './piano/types.ts';
import { candidatesOf, Transcriber, GRID, measureTuning, nameNotes, settle } from './transcribe/index.ts';
import type { AudioInput, Heard, KeptSound, PlayedNote } from './types.ts';
import { VoiceWatch } from './voices/index.ts';

/**
 * The listener's own timing noise, one standard deviation of an onset, ms (npm run bench:accuracy, development piano, all
 * registers and rooms of the standard set).
 */
const ONSET_SD_MS = 2;
/** … and of a note's level against the sound as it arrives, dB (our bench, development piano) */
const LEVEL_SD_DB = 0.9;

/** What may be known before a listening. */
export interface ListenOptions {
  /** what is known of this piano: the listening starts from its tuning; null: the tuning is waited for */
  readonly piano: PianoProfile | null;
}
export const LISTEN_DEFAULTS: ListenOptions = { piano: null };

/** A listening in progress. Blocks may have any length; batch = stream, to the last bit. */
export interface Listener {
  /** one Float32Array a channel, all of one length */
  push(block: readonly Float32Array[]): void;
  /** notes decided so far, in order of time; may still gain releases */
  notesSoFar(): readonly PlayedNote[];
  finish(): Heard;
  /** the sound, once finished */
  sound(): KeptSound;
}

/**
 * Opens a listening at the sound's own sample rate. Sound that cannot be used is a finding of the result, never an error.
 *
 * @throws UsageError on a rate outside 4000 to 768 000 Hz, on no or over 64 channels, and on blocks of other shape.
 * @example
 * const listener = createListener({ sampleRateHz: sound.sampleRateHz, channels: 1 });
 * for (let at = 0; at < 48_000; at += 4096) listener.push([sound.channels[0]!.subarray(at, at + 4096)]);
 * const { notes } = listener.finish();
 */
export function createListener(
  format: { readonly sampleRateHz: number; readonly channels: number },
  options: Partial<ListenOptions> = {},
): Listener {
  const { piano } = { ...LISTEN_DEFAULTS, ...options };
  const ear = new Transcriber({ knownCents: piano?.tuningCents.value ?? null });
  const lately = new SampleHistory(2 * RATE_HZ);
  const hum = new HumWatch(lately);
  const voice = new VoiceWatch(lately);
  const loudness = new LoudnessWatch();
  const kept = new KeptSamples();
  const anchor = new Anchor(
    GRID,
    (block, length) => ear.push(block, length),
    (sample) => ear.beginsAt(sample),
  );
  const audio = createAudioStream(format, (block, length) => {
    anchor.push(block, length);
    lately.append(block, 0, length);
    hum.advance();
    voice.advance();
    loudness.push(block, length);
    kept.push(block, length);
  });
  /** the ear's clock begins with the silence before the sound */
  const onSoundsClock = (note: PlayedNote): PlayedNote => {
    const aheadSec = anchor.padding / RATE_HZ;
    const { timeSec, releaseSec } = note;
    return {
      ...note,
      timeSec: timeSec - aheadSec,
      releaseSec: releaseSec === null ? null : releaseSec - aheadSec,
    };
  };
  return {
    push: (block) => audio.push(block),
    notesSoFar() {
      const settled = settle(ear.strikes);
      return nameNotes(settled, measureTuning(settled)).map(onSoundsClock);
    },
    finish() {
      const facts = audio.finish();
      anchor.finish();
      ear.finish();
      const settled = settle(ear.strikes);
      const tuning = measureTuning(settled);
      const isInSound = ({ timeSec }: { readonly timeSec: number }): boolean =>
        timeSec >= 0 && timeSec <= facts.durationSec;
      const notes = nameNotes(settled, tuning).map(onSoundsClock).filter(isInSound);
      const onsetsSec = notes.map(({ timeSec }) => timeSec);
      return {
        notes,
        tuning,
        findings: describeSound({
          audio: facts,
          hum: hum.facts(),
          quietDb: loudness.quantileDb(0.05),
          loudDb: loudness.quantileDb(0.9),
          glides: voice.glides,
          notes,
        }),
        passages: findPassages(onsetsSec, facts.durationSec),
        durationSec: facts.durationSec,
        sampleRateHz: format.sampleRateHz,
        onsetSdMs: ONSET_SD_MS,
        levelSdDb: LEVEL_SD_DB,
        candidates: candidatesOf(ear, tuning)
          .map((candidate) => ({
            ...candidate,
            timeSec: candidate.timeSec - anchor.padding / RATE_HZ,
            note: candidate.note === null ? null : onSoundsClock(candidate.note),
          }))
          .filter(isInSound),
      };
    },
    sound: () => ({
      get samples() {
        return kept.samples;
      },
      between: (fromSample, toSample) => kept.cut(fromSample, toSample),
      gainAt: (timeSec) => ear.gainAt(timeSec + anchor.padding / RATE_HZ),
    }),
  };
}

/** A whole recording → what was heard in it. */
export function listen(audio: AudioInput, options: Partial<ListenOptions> = {}): Heard {
  return listenAndKeep(audio, options).heard;
}

/**
 * A whole recording → what was heard in it, knowing no exercise, and the sound itself for a second listening.
 *
 * @throws UsageError on a rate outside 4000 to 768 000 Hz, no channel, or channels of different length.
 * @example
 * const { heard, sound: kept } = listenAndKeep(sound);
 * console.log(heard.notes.map(({ midi, timeSec }) => `${midi} at ${timeSec.toFixed(3)} s`), kept.samples.length);
 */
export function listenAndKeep(
  audio: AudioInput,
  options: Partial<ListenOptions> = {},
): { readonly heard: Heard; readonly sound: KeptSound } {
  const format = { sampleRateHz: audio.sampleRateHz, channels: audio.channels.length };
  const listener = createListener(format, options);
  listener.push(audio.channels);
  const heard = listener.finish();
  return { heard, sound: listener.sound() };
}
