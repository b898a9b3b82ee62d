import { describe, expect, it } from 'vitest';
import type { LiveEvent } from '../../../src/engine/index.ts';
import { withEvent, type LiveNote } from '../../../src/ui/sitting/state/live-notes.ts';

const struck = (id: number, timeSec: number, midi: number, final = false): LiveEvent => ({
  kind: 'struck',
  id,
  timeSec,
  midi,
  levelDb: -20,
  final,
});
const after = (...events: readonly LiveEvent[]): readonly LiveNote[] =>
  events.reduce<readonly LiveNote[]>(withEvent, []);

describe('the notes of an attempt in progress', () => {
  it('are corrected under their number, and stand in order of time', () => {
    const notes = after(struck(0, 1, 72), struck(1, 1.4, 64), struck(0, 1.01, 60, true));
    expect(notes.map(({ id, midi, final }) => [id, midi, final])).toEqual([
      [0, 60, true],
      [1, 64, false],
    ]);
  });

  it('lose a guess that was no note', () => {
    const notes = after(struck(0, 1, 72), struck(1, 1.4, 64), { kind: 'withdrawn', id: 0 });
    expect(notes.map(({ id }) => id)).toEqual([1]);
  });

  it('begin with the attempt: what sounded before it falls away', () => {
    const notes = after(struck(0, 1, 40), struck(1, 5, 60), struck(2, 5.4, 64), {
      kind: 'started',
      timeSec: 5,
      cutSec: 4,
    });
    expect(notes.map(({ id }) => id)).toEqual([1, 2]);
  });

  it('keep a first note that was not sure: all since the cut belongs to the attempt', () => {
    const notes = after(struck(0, 5, 60, true), struck(1, 5.4, 64, true), {
      kind: 'started',
      timeSec: 5.4,
      cutSec: 4,
    });
    expect(notes.map(({ id }) => id)).toEqual([0, 1]);
  });
});
