import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/index.ts';
import type { ExerciseChoice } from '../../../src/engine/index.ts';
import { AttemptWatch } from '../../../src/engine/live/attempts.ts';
import type { Certainty } from '../../../src/engine/live/attempts.ts';
import type { Expected, LiveEvent } from '../../../src/engine/live/types.ts';
import { inventedPassages } from '../../support/passages.ts';
import { createRandom } from '../../support/random.ts';

const OPTIONS = { expected: 'any', own: [], silenceSec: 2.5, beforeSec: 1 } as const;
const struck = (timeSec: number, midi: number) => ({ timeSec, midi, levelDb: -20, confidence: 0.95 });

/** What was heard, in order → the moment at which an attempt is said to have begun; null: none has. */
function begunAt(...heard: readonly (readonly [timeSec: number, certainty: Certainty])[]): number | null {
  const watch = new AttemptWatch(OPTIONS);
  const events = heard.flatMap(([timeSec, certainty]) => watch.note(struck(timeSec, 60), certainty));
  const [started] = events.filter((event) => event.kind === 'started');
  return started === undefined ? null : started.timeSec;
}

describe('an attempt', () => {
  it('begins with the first of three notes that are surely struck', () => {
    expect(begunAt([1, 'sure'], [1.3, 'sure'])).toBeNull();
    expect(begunAt([1, 'sure'], [1.3, 'sure'], [1.6, 'sure'])).toBe(1);
  });

  it('begins with notes that were only likely, being struck beside a voice, where the playing went on', () => {
    expect(begunAt([1, 'likely'], [1.3, 'likely'], [1.6, 'sure'], [1.9, 'sure'], [2.2, 'sure'])).toBe(1);
  });

  it('does not begin with a word taken for a string, well before the playing', () => {
    expect(begunAt([1, 'sure'], [2.5, 'sure'], [2.8, 'sure'])).toBe(2.5);
    expect(begunAt([1, 'likely'], [2.5, 'sure'], [2.8, 'sure'], [3.1, 'sure'])).toBe(2.5);
    expect(begunAt([2, 'doubtful'], [2.5, 'sure'], [2.8, 'sure'], [3.1, 'sure'])).toBe(2.5);
  });

  it('begins with its first note, however slow it is', () => {
    expect(begunAt([1, 'sure'], [2.7, 'sure'], [4.4, 'sure'])).toBe(1);
    expect(begunAt([1, 'sure'], [1.02, 'sure'], [2.7, 'sure'])).toBe(1);
  });
});

const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 1 };
const keys = (choice: ExerciseChoice): readonly number[] =>
  buildExercise(choice).steps.map(({ notes }) => notes[0]!.midi);

/** Keys with the waits before them, seconds, then silence → what is told, each with the sound that had come by then. */
function follow(
  playing: readonly (readonly [waitSec: number, midi: number])[],
  expected: Expected = SCALE,
  own: readonly ExerciseChoice[] = [],
): readonly { readonly event: LiveEvent; readonly atSec: number }[] {
  const watch = new AttemptWatch({ ...OPTIONS, expected, own });
  const told: { event: LiveEvent; atSec: number }[] = [];
  const notes: { sec: number; midi: number }[] = [];
  for (const [waitSec, midi] of playing) notes.push({ sec: (notes.at(-1)?.sec ?? 2) + waitSec, midi });
  const endSec = notes.at(-1)!.sec + 12;
  // A note is certain 0.45 s after it was struck.
  for (let step = 0, next = 0; step * 0.05 < endSec; step++) {
    const nowSec = step * 0.05;
    const tell = (events: readonly LiveEvent[]): void =>
      void told.push(...events.map((event) => ({ event, atSec: nowSec })));
    for (; next < notes.length && notes[next]!.sec <= nowSec - 0.45; next++)
      tell(watch.note(struck(notes[next]!.sec, notes[next]!.midi), 'sure'));
    tell(watch.pass(nowSec - 0.45, nowSec));
  }
  return told;
}
const evenly = (midis: readonly number[], waitSec = 0.4) => midis.map((midi) => [waitSec, midi] as const);
const endsOf = (told: ReturnType<typeof follow>) =>
  told.flatMap(({ event, atSec }) => (event.kind === 'ended' ? [{ ...event, atSec }] : []));
const kinds = (told: ReturnType<typeof follow>) => told.map(({ event }) => event.kind);
const lastSec = (playing: readonly (readonly [number, number])[]): number =>
  2 + playing.reduce((sum, [wait]) => sum + wait, 0);

describe('the exercise that was chosen', () => {
  const whole = evenly(keys(SCALE));

  it('ends its attempt within 1.2 s of its last note', () => {
    const told = follow(whole);
    expect(kinds(told)).toEqual(['started', 'ended']);
    expect(endsOf(told)[0]!.atSec - lastSec(whole)).toBeLessThan(1.2);
  });

  it.each([0.3, 1, 1.5, 2, 3])('is one attempt with all its notes at a note in %d s', (waitSec) => {
    const [only, ...others] = endsOf(follow(evenly(keys(SCALE), waitSec)));
    expect(others).toEqual([]);
    expect(only).toMatchObject({ notes: 15, startSec: expect.closeTo(1 + waitSec, 6) as number });
  });

  it.each([3, 5, 7.5])('is waited for where somebody thinks for %d s, and that is said once', (stopSec) => {
    for (const at of [1, 2, 7, 14]) {
      const told = follow(whole.map(([wait, midi], note) => [note === at ? stopSec : wait, midi] as const));
      expect(endsOf(told).map(({ notes }) => notes)).toEqual([15]);
      expect(kinds(told).filter((kind) => kind === 'waits').length).toBe(at > 2 ? 1 : 0);
    }
  });

  it('is over after 8 s where it was broken off past its half', () => {
    const told = follow(whole.slice(0, 11));
    expect(kinds(told)).toEqual(['started', 'waits', 'ended']);
    expect(endsOf(told)[0]!.atSec - lastSec(whole.slice(0, 11))).toBeCloseTo(8.45, 0);
  });

  it.each([0.6, 1, 1.6, 2.3])('played again after %d s is another attempt, at its first note', (pauseSec) => {
    const again = whole.map(([wait, midi], note) => [note === 0 ? pauseSec : wait, midi] as const);
    const ends = endsOf(follow([...whole, ...again]));
    expect(ends.map(({ notes }) => notes)).toEqual([15, 15]);
    expect(ends[0]!.endSec).toBeLessThan(lastSec(whole) + pauseSec);
    // Both may have the moment before the later onset.
    expect(ends[1]!.startSec).toBeGreaterThan(ends[0]!.endSec - 0.05);
    expect(ends[1]!.startSec).toBeLessThan(lastSec(whole) + pauseSec);
  });

  it('begun anew from a wrong start is one attempt, from where it was begun for good', () => {
    const told = follow([...whole.slice(0, 5), [1.5, whole[0]![1]], ...whole.slice(1)]);
    expect(endsOf(told)).toMatchObject([{ notes: 15 }]);
    expect(kinds(told)).toEqual(['started', 'started', 'ended']);
  });
});

describe('other playing', () => {
  const tune = [67, 67, 69, 67, 72, 71, 67, 67, 69, 67, 74, 72];

  it('is let go after a silence, whatever is expected', () => {
    for (const expected of ['any', SCALE] as const) {
      const told = follow(evenly(tune, 0.35), expected);
      expect(kinds(told)).toEqual(['started', 'let-go']);
    }
  });

  it('of a note or two begins nothing, and is told to be forgotten', () => {
    for (const stray of [[51], [51, 60]]) {
      const told = follow(evenly(stray, 0.35));
      expect(kinds(told)).toEqual(['forgotten']);
      expect(told[0]!.event).toMatchObject({ timeSec: lastSec(evenly(stray, 0.35)) });
    }
  });

  it('before an attempt is no part of it', () => {
    const [only, ...others] = endsOf(
      follow([...evenly(tune, 0.35), [1.2, 62], ...evenly(keys(SCALE).slice(1))]),
    );
    expect(others).toEqual([]);
    expect(only).toMatchObject({ notes: 15 });
    expect(only!.startSec).toBeGreaterThan(lastSec(evenly(tune, 0.35)));
  });

  it('that goes on and on is forgotten by and by, and an attempt after it is found', () => {
    const long = evenly(Array.from({ length: 14 }, () => tune).flat(), 0.25);
    const ends = endsOf(follow([...long, [1.2, 62], ...evenly(keys(SCALE).slice(1))]));
    expect(ends.map(({ notes }) => notes)).toEqual([15]);
    expect(ends[0]!.startSec).toBeGreaterThan(lastSec(long));
  });

  it('that is another exercise is an attempt, after the silence that was set', () => {
    const other = evenly(keys({ ...SCALE, key: 'A major' }));
    const [only] = endsOf(follow(other));
    expect(only).toMatchObject({ notes: 15 });
    expect(only!.atSec - lastSec(other)).toBeCloseTo(2.95, 0);
  });
});

describe('an exercise of both hands that nobody chose', () => {
  // As the ear hears them: the upper hand, which the lower one covers, twice in three, the lower one nearly always.
  const heard = (choice: ExerciseChoice, seed: number) => {
    const random = createRandom(seed);
    return buildExercise(choice).steps.flatMap(({ notes: [low, high] }, at) => {
      const ofStep = [...(random.chance(0.95) ? [low!] : []), ...(random.chance(0.67) ? [high!] : [])];
      return (ofStep.length === 0 ? [low!] : ofStep).map(
        ({ midi }, note) => [note > 0 ? 0 : at === 0 ? 1 : 0.4, midi] as const,
      );
    });
  };

  it.each([2, 3, 4])('is one over %i octaves, from its first note to its last', (octaves) => {
    for (const [at, key] of (['C minor', 'Ab major', 'F# major'] as const).entries()) {
      const playing = heard({ key, form: 'scale', hands: 'together', octaves }, 10 * octaves + at);
      const told = follow(playing, 'any');
      expect({ key, told: kinds(told) }).toEqual({ key, told: ['started', 'ended'] });
      expect(told[0]!.event).toMatchObject({ timeSec: 3 });
      expect(endsOf(told)[0]).toMatchObject({ notes: playing.length });
    }
  });
});

describe('a passage of one’s own that nobody chose', () => {
  const own = inventedPassages(8);
  const BEAT_SEC = 0.9;
  /** A passage as it is written, each note with the wait before it. */
  const asWritten = ({ steps }: ReturnType<typeof buildExercise>) =>
    steps.flatMap(({ notes, beat }, step) =>
      notes.map(({ midi }, at) => {
        const beats = step === 0 || at > 0 ? 0 : beat - steps[step - 1]!.beat;
        return [BEAT_SEC * beats, midi] as const;
      }),
    );

  it('is an attempt, over within 1.2 s of its last note', () => {
    for (const passage of own.slice(0, 3)) {
      const playing = asWritten(buildExercise(passage));
      const ends = endsOf(follow(playing, 'any', own));
      expect(ends.map(({ notes }) => notes)).toEqual([playing.length]);
      expect(ends[0]!.atSec - lastSec(playing)).toBeLessThan(1.2);
    }
  });

  it('is one where another exercise or passage was chosen, after the silence that was set', () => {
    const [first, second] = own;
    const playing = asWritten(buildExercise(second!));
    for (const chosen of [SCALE, first!]) {
      const ends = endsOf(follow(playing, chosen, own));
      expect(ends.map(({ notes }) => notes)).toEqual([playing.length]);
      expect(ends[0]!.atSec - lastSec(playing)).toBeCloseTo(2.95, 0);
    }
  });

  it('is other playing to whoever does not have it', () => {
    for (const passage of own.slice(0, 3))
      expect(kinds(follow(asWritten(buildExercise(passage)), 'any')).at(-1)).toBe('let-go');
  });
});

describe('what is ended from outside', () => {
  const watched = (count: number, expected: Expected = SCALE) => {
    const watch = new AttemptWatch({ ...OPTIONS, expected });
    keys(SCALE)
      .slice(0, count)
      .forEach((midi, at) => watch.note(struck(2 + 0.4 * at, midi), 'sure'));
    return watch;
  };

  it('is told as far as it went', () => {
    expect(watched(5).close(5)).toMatchObject([{ kind: 'ended', startSec: 1, endSec: 5, notes: 5 }]);
    expect(watched(2).close(5)).toEqual([]);
  });

  it('is told with all that was struck where a part was set up to be practised', () => {
    expect(watched(4, 'part').close(5)).toMatchObject([{ kind: 'ended', notes: 4 }]);
  });
});
