export { checkRoom, measureSilence } from './room-check.ts';
export type { RoomCheck, RoomFinding, Silence } from './room-check.ts';
export type * from './types.ts';
import { RATE_HZ, SampleHistory } from '../listen/audio/index.ts';
import { Resampler } from '../listen/audio/resample.ts';
import type { PianoProfile } from '../listen/index.ts';
import type { NetworkNote } from '../listen/network/index.ts';
import { VoiceWatch } from '../listen/voices/index.ts';
import { AttemptWatch } from './attempts.ts';
import type { Certainty } from './attempts.ts';
import { BesideVoice } from './beside-voice.ts';
import { FirstGuess } from './first-guess.ts';
import { Judge } from './judge.ts';
import type { Guess } from './judge.ts';
import { Ledger } from './ledger.ts';
import { LevelWatch } from './level.ts';
import { Loudness } from './loudness.ts';
import { OneChannel } from './one-channel.ts';
import { isOneMoment } from './pairs.ts';
import { SecondHearing } from './second-hearing.ts';
import { LiveTuning } from './tuning.ts';
import { LIVE_DEFAULTS } from './types.ts';
import type { Expected, LiveEvent, LiveOptions, OwnSound } from './types.ts';
import { DOUBTFUL_SEC } from './waits.ts';

/** seconds of sound the ear itself remembers */
const HISTORY_SEC = 6;
/** sound is taken in steps of so many samples, 5.8 ms, so that nothing depends on how it was cut into blocks */
const STEP = 128;
/** A string goes on sounding, a syllable does not: on the development piano 341 of 413 notes pass, of two minutes of talk four syllables. */
const STRING = { probability: 0.75, sounding: 0.9 } as const;
/** a string is read where the note is believed so much: less than it takes to count, since a wrong tuning lowers all beliefs */
const READABLE = 0.42;
/** asked so early, the network is less sure that a string sounds on */
const EARLY_SOUNDING = 0.5;
/**
 * A voice is looked for every 93 ms, and what sounds within so many seconds of one is doubtful: synthetic talk glides 1.7 times a
 * second and never stays away for longer than two, the development piano glides once in a hundred seconds.
 */
const VOICE_EVERY = 2048;
const VOICE_SEC = 1.5;
/** a string of this piano lies so near to its tuning, cents: it may stray by 10, and is read to 3 */
const OWN_CENTS = { sure: 12, likely: 25 } as const;
/** with so much silence behind it all that was struck is certain, seconds */
const HEARD_OUT_SEC = 1;
/** own sounds are forgotten so long after their end, seconds */
const FORGET_SEC = 10;

/** An ear beside the playing. What it tells depends on the sound alone, not on how it was cut into blocks. */
export interface LiveListener {
  /** Takes one Float32Array a channel, all of one length; returns what came to be known by it. */
  push(block: readonly Float32Array[]): readonly LiveEvent[];
  /** The device makes a sound of its own; to be told before that sound is pushed. */
  mute(sound: OwnSound): void;
  /** From here on: this piano. */
  usePiano(piano: PianoProfile): void;
  /** From here on this is to be played. */
  expect(expected: Expected): void;
  /** Hears out what is still open, as if silence followed; ends an attempt that is under way. */
  flush(): readonly LiveEvent[];
}

function isString({ probability, sounding }: NetworkNote): boolean {
  return probability >= STRING.probability && sounding >= STRING.sounding;
}

/**
 * Opens an ear at the sound's own rate, for sound as it comes from a microphone: blocks of any length go in, events come out.
 *
 * @throws UsageError on no channel, and on blocks with other channels than were announced.
 * @example
 * const ear = createLiveListener({ sampleRateHz: 48_000, channels: 1 });
 * for (const event of ear.push([new Float32Array(128)])) if (event.kind === 'ended') console.log(event.startSec, event.endSec);
 */
export function createLiveListener(
  format: { readonly sampleRateHz: number; readonly channels: number },
  options: Partial<LiveOptions> = {},
): LiveListener {
  const { expected, own, silenceSec, beforeSec, piano } = { ...LIVE_DEFAULTS, ...options };
  const history = new SampleHistory(HISTORY_SEC * RATE_HZ);
  const loudness = new Loudness(history);
  const tuning = new LiveTuning(history, piano?.tuningCents.value ?? null);
  const firstGuess = new FirstGuess(history);
  const secondHearing = new SecondHearing(history, loudness);
  const judge = new Judge();
  const ledger = new Ledger();
  const attempts = new AttemptWatch({ expected, own, silenceSec, beforeSec });
  const besideVoice = new BesideVoice();
  const voice = new VoiceWatch(history, VOICE_EVERY);
  const levels = new LevelWatch();
  const channel = new OneChannel(format.channels);
  const step = new Float64Array(STEP);
  let filled = 0;
  let muted: readonly OwnSound[] = [];
  let doubtful: readonly NetworkNote[] = [];
  let events: LiveEvent[] = [];

  const counts = ({ timeSec }: NetworkNote): boolean =>
    !muted.some(({ kind, fromSec, toSec }) => kind === 'voice' && timeSec >= fromSec && timeSec < toSec);
  const isVoiced = ({ timeSec }: NetworkNote): boolean =>
    voice.lastGlide !== null && voice.lastGlide / RATE_HZ > timeSec - VOICE_SEC;
  /** Guesses at the device's own clicks are not drawn, nor, while nobody plays, what somebody says. */
  const isWorthDrawing = (guess: Guess): boolean => {
    const { note } = guess;
    if (muted.some(({ fromSec, toSec }) => note.timeSec >= fromSec && note.timeSec < toSec)) return false;
    if (attempts.started) return true;
    if (isVoiced(note)) return besideVoice.isPlaying(guess);
    return note.sounding > EARLY_SOUNDING || ledger.hasGuessAt(note.timeSec);
  };

  const certaintyOf = (note: NetworkNote, next: NetworkNote | undefined): Certainty => {
    const voiced = isVoiced(note);
    const offset = note.probability < READABLE ? null : tuning.offsetOf(note, next, voiced);
    if (!isString(note)) return 'doubtful';
    if (offset === 'first') return voiced ? 'doubtful' : 'likely';
    if (offset === null) return attempts.isNear(note) && !voiced ? 'likely' : 'doubtful';
    if (offset < OWN_CENTS.sure) return voiced ? 'likely' : 'sure';
    return offset < OWN_CENTS.likely && !voiced ? 'likely' : 'doubtful';
  };

  const takeStep = (): void => {
    history.append(step, 0, STEP);
    loudness.push(step, 0, STEP);
    voice.advance();
    for (const sample of step) {
      const level = levels.take(sample);
      if (level !== null) events.push({ kind: 'level', timeSec: history.end / RATE_HZ, ...level });
    }
    const guesses = firstGuess.advance(
      (now) => ({ cents: tuning.cents(), gain: loudness.gainNow(now) }),
      attempts.playing,
    );
    const worthDrawing = judge.guess(guesses).filter(isWorthDrawing);
    events.push(...ledger.guess(worthDrawing.map(({ note }) => note)));
    const { certain, open } = judge.settle(secondHearing.advance(tuning.cents()).filter(counts));
    const graded = certain.map((note, i) => ({ note, certainty: certaintyOf(note, certain[i + 1]) }));
    const begun = graded.flatMap(({ note, certainty }) =>
      attempts.note({ ...note, confidence: note.probability }, certainty),
    );
    // What was doubtful is told after all once an attempt has begun around it.
    const waiting = begun.length > 0 ? doubtful.filter((note) => attempts.isNear(note)) : [];
    const told = graded.filter(({ certainty }) => attempts.started || certainty !== 'doubtful');
    const certainSec = secondHearing.certainSec;
    // What goes on beside a voice is open only with a string of this piano.
    const isStringAt = (note: NetworkNote): boolean =>
      graded.some(({ note: other, certainty }) => certainty !== 'doubtful' && isOneMoment(note, other));
    const left = open.filter((note) => attempts.playing && (!isVoiced(note) || isStringAt(note)));
    const struck = [...waiting, ...told.map(({ note }) => note)];
    if (attempts.started) judge.played([...struck, ...left]);
    events.push(...ledger.settle(struck, left, certainSec), ...begun);
    doubtful = attempts.started
      ? []
      : [...doubtful, ...graded.flatMap(({ note, certainty }) => (certainty === 'doubtful' ? [note] : []))];
    doubtful = doubtful.filter(({ timeSec }) => timeSec > certainSec - DOUBTFUL_SEC);
    events.push(...attempts.pass(certainSec, history.end / RATE_HZ, ledger.guessAfter(certainSec)));
    if (!attempts.playing) tuning.stopped();
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
    usePiano: (known) => tuning.know(known.tuningCents.value),
    expect: (what) => attempts.expect(what),
    flush: () => {
      const silence = new Float32Array(Math.ceil(HEARD_OUT_SEC * format.sampleRateHz));
      const heardOut = push(Array.from({ length: format.channels }, () => silence));
      return [...heardOut, ...attempts.close(history.end / RATE_HZ)];
    },
  };
}
