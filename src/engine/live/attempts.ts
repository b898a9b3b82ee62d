import type { ExerciseChoice } from '../exercise/index.ts';
import type { Passage, PlayedNote } from '../listen/index.ts';
import { underWay } from '../match/index.ts';
import type { ExerciseStretch, UnderWay } from '../match/index.ts';
import { isExercise, keysOf } from './other-playing.ts';
import type { Expected, LiveEvent } from './types.ts';
import {
  beginningOf,
  DOUBTFUL_SEC,
  endsAfterSec,
  forgottenAfterSec,
  hadStopped,
  longestWait,
  MOMENT_SEC,
  saysAfterSec,
} from './waits.ts';
import type { Course } from './waits.ts';

/** so many sure notes make an attempt: one or two may be a key dusted, or a word */
const LEAST_SURE = 3;
/** a note in reach of the playing: within an octave of one in so many seconds before it */
const NEAR = { semitones: 12, sec: 4.5 } as const;
/** an exercise has begun anew when it has gone on for so many moments */
const ANEW_MOMENTS = 3;
/** the last key struck again within this belongs to the exercise, seconds; what comes later begins something else */
const AGAIN_SEC = 0.5;
/** so many notes are remembered: the longest exercise of the set, four octaves in both hands, has 114; and of a passage so many times its own */
const MOST_NOTES = 160;
const TIMES_A_PASSAGE = 1.5;
/** a note that makes an account so much dearer is none of the exercise, in units of one missed note */
const ONE_MORE = 0.3;
/** a doubtful note is the first where it is followed within so many times the longest wait */
const FIRST_WAITS = 1.5;
/** of a pause between two attempts so much, and so many seconds at most, is the later one's lead */
const LEAD = { share: 0.4, sec: 0.6 } as const;
/** an onset is given so much sound before it, seconds */
const ONSET_SEC = 0.05;
/** what is struck is guessed at within this, seconds: later sound may hold the beginning of the next attempt */
const UNKNOWN_SEC = 0.12;

export interface AttemptOptions {
  readonly silenceSec: number;
  readonly beforeSec: number;
  readonly expected: Expected;
  readonly own: readonly ExerciseChoice[];
}

/** sure: a string of this piano; likely: a string, perhaps of this piano; doubtful: heard, but a syllable may sound so */
export type Certainty = 'sure' | 'likely' | 'doubtful';

type Struck = Pick<PlayedNote, 'timeSec' | 'midi' | 'levelDb' | 'confidence'>;
type Noted = PlayedNote & { readonly certainty: Certainty };

/**
 * Notes and the passing of time → attempts begun and ended. Only sure notes begin one, since talk and clatter sound like a note
 * now and then; likely ones keep it going, and are part of its beginning; what was heard shortly before belongs to its sound, however
 * doubtful.
 *
 * Where it ends the exercise decides (`underWay`): whole, it is over; begun anew, another one follows; unfinished, it is waited for as
 * long as a learner thinks. What is no exercise is over with a silence, and let go.
 */
export class AttemptWatch {
  readonly #options: AttemptOptions;
  #expected: Expected;
  #notes: readonly Noted[] = [];
  #startSec: number | null = null;
  #lastSec = -Infinity;
  /** where the attempt before ended: no sound belongs to two, but for the moment before an onset */
  #lastEndSec = 0;
  /** null: to be looked at anew */
  #course: UnderWay | null = null;
  #saysWaiting = false;

  constructor(options: AttemptOptions) {
    this.#options = options;
    this.#expected = options.expected;
  }

  /** From here on this is to be played. */
  expect(expected: Expected): void {
    this.#expected = expected;
    this.#course = null;
  }

  /** something that may be an attempt has sounded, and is not over */
  get playing(): boolean {
    return this.#notes.length > 0;
  }

  get started(): boolean {
    return this.#startSec !== null;
  }

  /** Within an octave of something that has just been played. */
  isNear({ timeSec, midi }: Pick<Struck, 'timeSec' | 'midi'>): boolean {
    return this.#notes.some(
      (note) =>
        note.certainty !== 'doubtful' &&
        Math.abs(note.midi - midi) <= NEAR.semitones &&
        timeSec - note.timeSec < NEAR.sec,
    );
  }

  note(note: Struck, certainty: Certainty): LiveEvent[] {
    const noted = { ...note, cents: 0, releaseSec: null, certainty };
    const over = this.#isBeyond(noted)
      ? this.#endAll(note.timeSec - leadSec(note.timeSec - this.#lastSec))
      : [];
    this.#notes = inTime([...this.#notes, noted]).slice(-this.#mostNotes);
    this.#course = null;
    this.#saysWaiting = false;
    if (certainty !== 'doubtful') this.#lastSec = Math.max(this.#lastSec, note.timeSec);
    const sure = this.#notes.filter((one) => one.certainty === 'sure');
    if (this.#startSec !== null || sure.length < LEAST_SURE) return over;
    return [...over, this.#start(beginningOf(this.#struck()))];
  }

  /** The exercise is whole, and this note begins something else: it would be one too many. */
  #isBeyond(note: Noted): boolean {
    if (note.certainty === 'doubtful' || note.timeSec - this.#lastSec <= AGAIN_SEC) return false;
    if (this.#kind() !== 'whole') return false;
    const { standing } = this.#asExercises(inTime([...this.#notes, note]));
    return standing === null || standing.cost > this.#look().standing!.cost + ONE_MORE;
  }

  /** All notes before `certainSec` are known; `nowSec` has been heard. `guessSec`: a key may have been struck then; null: none. */
  pass(certainSec: number, nowSec: number, guessSec: number | null = null): LiveEvent[] {
    const { silenceSec } = this.#options;
    const silentSec = certainSec - this.#lastSec;
    if (this.#startSec === null) {
      return silentSec > forgottenAfterSec(silenceSec) ? this.#forgetStray(certainSec) : [];
    }
    const anew = this.#course === null ? this.#beginAnew() : [];
    const longestSec = longestWait(this.#struck());
    const course = this.#kind();
    if (silentSec >= endsAfterSec(course, silenceSec, longestSec)) {
      const guessed = guessSec !== null && guessSec > this.#lastSec + MOMENT_SEC;
      return [...anew, ...this.#endAll(guessed ? guessSec - ONSET_SEC : nowSec - UNKNOWN_SEC)];
    }
    if (course !== 'unfinished' || this.#saysWaiting || silentSec < saysAfterSec(longestSec)) return anew;
    this.#saysWaiting = true;
    return [...anew, { kind: 'waits', timeSec: nowSec }];
  }

  #forgetStray(certainSec: number): LiveEvent[] {
    const told = this.#struck().map(({ timeSec }) => timeSec);
    // Words go on for ever: what is doubtful does not keep others.
    this.#notes = this.#notes.filter(
      ({ timeSec, certainty }) => certainty === 'doubtful' && timeSec > certainSec - DOUBTFUL_SEC,
    );
    return told.length === 0 ? [] : [{ kind: 'forgotten', timeSec: Math.max(...told) }];
  }

  /** Nothing more will come. */
  close(nowSec: number): LiveEvent[] {
    if (this.#startSec === null) return [];
    const { stretches, standing } = this.#look();
    if (standing === null || stretches.some((one) => this.#isTold(one))) return this.#endAll(nowSec);
    // Whoever stops the listening in the middle wants to know what was heard of it.
    const { startSec } = standing;
    return this.#forget([this.#end({ startSec, endSec: this.#lastSec }, nowSec)]);
  }

  #struck(): readonly Noted[] {
    return this.#notes.filter(({ certainty }) => certainty !== 'doubtful');
  }

  #look(): UnderWay {
    this.#course ??= this.#expected === 'part' ? this.#asPart() : this.#asExercises(this.#notes);
    return this.#course;
  }

  get #mostNotes(): number {
    const chosen = this.#chosen;
    const passages = [...(chosen?.passage === undefined ? [] : [chosen]), ...this.#options.own];
    return Math.max(MOST_NOTES, ...passages.map((passage) => TIMES_A_PASSAGE * keysOf(passage)));
  }

  get #chosen(): ExerciseChoice | null {
    return typeof this.#expected === 'string' ? null : this.#expected;
  }

  #asExercises(notes: readonly Noted[]): UnderWay {
    return underWay(notes, this.#chosen, this.#options.own);
  }

  #asPart(): UnderWay {
    const startSec = this.#startSec ?? this.#lastSec;
    const stretches = [{ startSec, endSec: this.#lastSec, isChosen: true, isWhole: false }];
    return { stretches, before: [], standing: null };
  }

  #kind(): Course {
    if (this.#startSec === null) return 'none';
    const { standing } = this.#look();
    if (standing === null) return 'none';
    if (!standing.isWhole) return 'unfinished';
    // Another exercise than was chosen may be the beginning of something longer.
    return standing.isChosen || this.#expected === 'any' ? 'whole' : 'none';
  }

  #start(startSec: number): LiveEvent {
    this.#startSec = startSec;
    return { kind: 'started', timeSec: startSec, cutSec: this.#cutBefore(startSec) };
  }

  /** Exercises that have been gone through end where the next one begins; what stands before it is no part of that. */
  #beginAnew(): LiveEvent[] {
    const { before, standing } = this.#look();
    if (standing === null || standing.moments < ANEW_MOMENTS || !this.#isAnew(standing, before)) return [];
    const over = before.flatMap((one, at): LiveEvent[] =>
      this.#isTold(one)
        ? [this.#end(one, this.#cutBefore(before[at + 1]?.startSec ?? standing.startSec))]
        : [],
    );
    const isLater = standing.startSec > this.#startSec! + MOMENT_SEC;
    const anew = over.length > 0 || isLater ? [this.#start(standing.startSec)] : [];
    if (before.length > 0) {
      this.#notes = this.#notes.filter(({ timeSec }) => timeSec >= standing.startSec);
      this.#course = null;
    }
    return [...over, ...anew];
  }

  /**
   * What was not chosen begins anew only after something whole, or after a stop: a long exercise begins as a shorter one does, and
   * going on is cheaper to explain as another one for a while.
   */
  #isAnew(standing: NonNullable<UnderWay['standing']>, before: UnderWay['before']): boolean {
    if (standing.isChosen || before.at(-1)?.isWhole === true) return true;
    return hadStopped(this.#struck(), standing.startSec);
  }

  /** The playing is over: what exercises explain is told, all else let go. */
  #endAll(endSec: number): LiveEvent[] {
    const told = this.#look().stretches.filter((one) => this.#isTold(one));
    const events = told.flatMap((one, at): LiveEvent[] => {
      const next = told[at + 1];
      const started = at === 0 ? [] : [this.#start(one.startSec)];
      return [...started, this.#end(one, next === undefined ? endSec : this.#cutBefore(next.startSec))];
    });
    return this.#forget(events.length > 0 ? events : [{ kind: 'let-go', timeSec: endSec }]);
  }

  #isTold(stretch: ExerciseStretch): boolean {
    if (this.#expected === 'part') return true;
    return isExercise(this.#notes, stretch, this.#chosen, this.#options.own);
  }

  #end({ startSec, endSec: lastSec }: Passage, endSec: number): LiveEvent {
    const cutSec = this.#cutBefore(startSec);
    const notes = this.#struck().filter(({ timeSec }) => timeSec >= startSec && timeSec <= lastSec).length;
    this.#lastEndSec = endSec;
    return { kind: 'ended', startSec: cutSec, endSec, notes };
  }

  #forget(told: LiveEvent[]): LiveEvent[] {
    this.#notes = [];
    this.#startSec = null;
    this.#course = null;
    return told;
  }

  /** Where the sound of what begins here is cut: all that is near before it, but nothing of another note. */
  #cutBefore(startSec: number): number {
    const { beforeSec } = this.#options;
    const struck = this.#struck().filter(({ timeSec }) => timeSec < startSec - MOMENT_SEC);
    const last = struck.at(-1);
    const leads = last === undefined ? beforeSec : leadSec(startSec - last.timeSec);
    const from = last === undefined ? this.#firstDoubtful(startSec) : startSec;
    return Math.max(0, Math.min(Math.max(this.#lastEndSec, from - leads), startSec - ONSET_SEC));
  }

  /** What was doubtful so shortly before that it may be the first of the playing. */
  #firstDoubtful(startSec: number): number {
    const nearSec = FIRST_WAITS * longestWait(this.#struck());
    return this.#notes
      .filter(({ timeSec }) => timeSec < startSec)
      .reduceRight((first, { timeSec }) => (first - timeSec <= nearSec ? timeSec : first), startSec);
  }
}

function inTime(notes: readonly Noted[]): readonly Noted[] {
  return [...notes].sort((a, b) => a.timeSec - b.timeSec);
}

function leadSec(pauseSec: number): number {
  return Math.min(LEAD.sec, LEAD.share * pauseSec);
}
