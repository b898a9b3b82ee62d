export { checkRoom, measureSilence } from './room-check.ts';
export type { RoomCheck, RoomFinding, RoomFindingKind, Silence } from './room-check.ts';
export type * from './types.ts';
export { LIVE_DEFAULTS } from './types.ts';
import { RATE_HZ, SampleHistory } from '../listen/audio/index.ts';
import { Resampler } from '../listen/audio/resample.ts';
import type { PianoProfile } from '../listen/index.ts';
import type { NetworkNote } from '../listen/network/index.ts';
import { RoughTuning } from '../listen/transcribe/rough-tuning.ts';
import { AttemptWatch } from './attempts.ts';
import { FirstGuess } from './first-guess.ts';
import { Judge } from './judge.ts';
import { Ledger } from './ledger.ts';
import { LevelWatch } from './level.ts';
import { Loudness } from './loudness.ts';
import { OneChannel } from './one-channel.ts';
import { SecondHearing } from './second-hearing.ts';
import { LIVE_DEFAULTS } from './types.ts';
import type { LiveEvent, LiveOptions, OwnSound } from './types.ts';

/** seconds of sound the ear itself remembers */
const HISTORY_SEC = 6;
/** sound is taken in steps of so many samples, 5.8 ms, so that nothing depends on how it was cut into blocks */
const STEP = 128;
/** a tuning is believed after so much sounding, where none is known */
const TUNING_SEC = 0.7;
/**
 * Drawn early when it is likelier than this, and certain when than this (our bench, development piano, hands alone and together: a
 * higher bound loses the upper of two notes an octave apart, a lower one lets ghosts of chords in).
 */
const CHANCE = { guess: 0.6, certain: 0.35 } as const;
/** own sounds are forgotten so long after their end, seconds */
const FORGET_SEC = 10;

/** An ear beside the playing. What it tells depends on the sound alone, not on how it was cut into blocks. */
export interface LiveEar {
  /** Takes one Float32Array a channel, all of one length; returns what came to be known by it. */
  push(block: readonly Float32Array[]): readonly LiveEvent[];
  /** The device makes a sound of its own; to be told before that sound is pushed. */
  mute(sound: OwnSound): void;
  /** From here on: this piano. */
  usePiano(piano: PianoProfile): void;
  /** Hears out what is still open, as if silence followed; ends an attempt that is under way. */
  flush(): readonly LiveEvent[];
}

/** Opens an ear at the sound's own rate. */
export function createLiveEar(
  format: { readonly sampleRateHz: number; readonly channels: number },
  options: Partial<LiveOptions> = {},
): LiveEar {
  const { silenceSec, beforeSec, piano } = { ...LIVE_DEFAULTS, ...options };
  const history = new SampleHistory(HISTORY_SEC * RATE_HZ);
  const loudness = new Loudness(history);
  const tuning = new RoughTuning(history);
  const firstGuess = new FirstGuess(history);
  const secondHearing = new SecondHearing(history, loudness);
  const judge = new Judge();
  const ledger = new Ledger();
  const attempts = new AttemptWatch({ silenceSec, beforeSec });
  const levels = new LevelWatch();
  const channel = new OneChannel(format.channels);
  const step = new Float64Array(STEP);
  let filled = 0;
  let knownCents = piano?.tuningCents.value ?? null;
  let muted: readonly OwnSound[] = [];
  let events: LiveEvent[] = [];

  const cents = (): number => knownCents ?? (tuning.heardSec >= TUNING_SEC ? tuning.cents() : 0);
  const counts = ({ timeSec }: NetworkNote): boolean =>
    !muted.some((own) => own.kind === 'voice' && timeSec >= own.fromSec && timeSec < own.toSec);
  const isNoClick = ({ timeSec }: NetworkNote): boolean =>
    !muted.some((own) => timeSec >= own.fromSec && timeSec < own.toSec);

  const takeStep = (): void => {
    history.append(step, 0, STEP);
    loudness.push(step, 0, STEP);
    tuning.advance();
    for (const sample of step) {
      const level = levels.take(sample);
      if (level !== null) events.push({ kind: 'level', timeSec: history.end / RATE_HZ, ...level });
    }
    const guesses = firstGuess.advance((now) => ({ cents: cents(), gain: loudness.gainNow(now) }));
    events.push(...ledger.guess(judge.likely(guesses, CHANCE.guess).filter(isNoClick)));
    const certain = judge.settle(secondHearing.advance(cents()).filter(counts), CHANCE.certain);
    events.push(...ledger.certain(certain, secondHearing.certainSec));
    for (const { timeSec } of certain) events.push(...attempts.note(timeSec));
    events.push(...attempts.pass(secondHearing.certainSec, history.end / RATE_HZ));
    if (muted.length > 0) muted = muted.filter(({ toSec }) => toSec > history.end / RATE_HZ - FORGET_SEC);
  };
  const resampler = new Resampler(format.sampleRateHz, RATE_HZ, (block, length) => {
    for (let i = 0; i < length; i++) {
      step[filled++] = block[i]!;
      if (filled < STEP) continue;
      filled = 0;
      takeStep();
    }
  });
  const push = (block: readonly Float32Array[]): readonly LiveEvent[] => {
    const { samples, length } = channel.take(block);
    resampler.push(samples, length);
    const told = events;
    events = [];
    return told;
  };
  return {
    push,
    mute: (sound) => void (muted = [...muted, sound]),
    usePiano: (known) => void (knownCents = known.tuningCents.value),
    flush: () => {
      const silence = new Float32Array(Math.ceil((silenceSec + 1) * format.sampleRateHz));
      return push(Array.from({ length: format.channels }, () => silence));
    },
  };
}
