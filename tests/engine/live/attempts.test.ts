import { describe, expect, it } from 'vitest';
import { AttemptWatch } from '../../../src/engine/live/attempts.ts';
import type { Certainty } from '../../../src/engine/live/attempts.ts';

/** What was heard, in order → the moment at which an attempt is said to have begun; null: none has. */
function begunAt(...heard: readonly (readonly [timeSec: number, certainty: Certainty])[]): number | null {
  const watch = new AttemptWatch({ silenceSec: 2.5, beforeSec: 1 });
  const events = heard.flatMap(([timeSec, certainty]) => watch.note({ timeSec, midi: 60 }, certainty));
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

  it('holds the sound before it, the word too', () => {
    const watch = new AttemptWatch({ silenceSec: 2.5, beforeSec: 1 });
    const events = [1.5, 3, 3.3].flatMap((timeSec) => watch.note({ timeSec, midi: 60 }, 'sure'));
    expect(events).toEqual([{ kind: 'started', timeSec: 3, cutSec: 0.5 }]);
  });
});
