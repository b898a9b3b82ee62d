import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exerciseOf, nameAt, placeOf, samePassage } from '../../../src/engine/index.ts';
import type { WrittenNote } from '../../../src/engine/index.ts';
import {
  after,
  first,
  handed,
  lengthened,
  put,
  raised,
  stepped,
  taken,
  withThird,
} from '../../../src/ui/compose/edits.ts';
import type { Edited } from '../../../src/ui/compose/edits.ts';
import { choiceOn, drawnOf, EMPTY_SHEET, sheetOf } from '../../../src/ui/compose/sheet.ts';
import type { Sheet } from '../../../src/ui/compose/sheet.ts';
import { barsOf } from '../../../src/ui/plots/staff/written.ts';
import { inventedPassages } from '../../support/passages.ts';

const note = (text: string): WrittenNote => {
  const [name = '', hand, beat, beats] = text.split(' ');
  return { name, hand: hand === 'l' ? 'left' : 'right', beat: Number(beat), beats: Number(beats) };
};
const sheet = (...notes: readonly string[]): Sheet => ({ ...EMPTY_SHEET, notes: notes.map(note) });
const written = ({ notes }: Sheet): readonly string[] =>
  notes.map(({ name, hand, beat, beats }) => `${name} ${hand[0]} ${beat} ${beats}`);
const LINE = sheet('C4 r 0 1', 'E4 r 1 1', 'G4 r 2 2');
const edited = (result: Edited): { notes: readonly string[]; chosen: string | null } => ({
  notes: written(result.sheet),
  chosen: result.chosen?.name ?? null,
});

describe('a passage set right note by note', () => {
  const rows: readonly (readonly [string, Edited, readonly string[], string | null])[] = [
    ['a step up', stepped(LINE, LINE.notes[1]!, 1), ['C4 r 0 1', 'F4 r 1 1', 'G4 r 2 2'], 'F4'],
    ['an octave down', stepped(LINE, LINE.notes[2]!, -7), ['C4 r 0 1', 'E4 r 1 1', 'G3 r 2 2'], 'G3'],
    [
      'a semitone up, the letter kept',
      raised(LINE, LINE.notes[0]!, 1),
      ['C#4 r 0 1', 'E4 r 1 1', 'G4 r 2 2'],
      'C#4',
    ],
    [
      'longer, and what follows moves along',
      lengthened(LINE, LINE.notes[0]!, 1.5, true),
      ['C4 r 0 1.5', 'E4 r 1.5 1', 'G4 r 2.5 2'],
      'C4',
    ],
    [
      'shorter, and a rest stays',
      lengthened(LINE, LINE.notes[0]!, 0.5, false),
      ['C4 r 0 0.5', 'E4 r 1 1', 'G4 r 2 2'],
      'C4',
    ],
    ['given to the other hand', handed(LINE, LINE.notes[0]!), ['C4 l 0 1', 'E4 r 1 1', 'G4 r 2 2'], 'C4'],
    ['begun', first(EMPTY_SHEET, 2), ['C4 r 0 2'], 'C4'],
    [
      'begun with the left hand, in its key',
      first({ ...EMPTY_SHEET, key: 'Bb minor', hands: 'left' }, 1),
      ['Bb3 l 0 1'],
      'Bb3',
    ],
    ['taken out', taken(LINE, LINE.notes[1]!), ['C4 r 0 1', 'G4 r 2 2'], 'C4'],
    [
      'a third added',
      withThird(LINE, LINE.notes[0]!),
      ['C4 r 0 1', 'E4 r 0 1', 'E4 r 1 1', 'G4 r 2 2'],
      'E4',
    ],
    [
      'one more after it, and what follows makes room',
      after(LINE, LINE.notes[0]!, 0.5, true),
      ['C4 r 0 1', 'C4 r 1 0.5', 'E4 r 1.5 1', 'G4 r 2.5 2'],
      'C4',
    ],
    [
      'one put into what sounds on, which ends there',
      put(LINE, note('A4 r 3 1')),
      ['C4 r 0 1', 'E4 r 1 1', 'G4 r 2 1', 'A4 r 3 1'],
      'A4',
    ],
    ['one put where it stands already', put(LINE, note('E4 r 1 4')), written(LINE), 'E4'],
    ['one put beyond the last bar', put(LINE, note('E4 r 64 1')), written(LINE), null],
  ];
  for (const [name, result, notes, chosen] of rows)
    it(`${name}`, () => expect(edited(result)).toEqual({ notes, chosen }));

  it('never leaves the keyboard', () => {
    const top = sheet('C8 r 0 1');
    expect(edited(stepped(top, top.notes[0]!, 1)).notes).toEqual(['C8 r 0 1']);
    expect(edited(raised(top, top.notes[0]!, 1)).notes).toEqual(['C8 r 0 1']);
  });

  it('keeps thirds of a beat on their places however often they are moved', () => {
    const triplets = sheet('C4 r 0 0.3333', 'D4 r 0.3333 0.3333', 'E4 r 0.6667 0.3333', 'F4 r 1 1');
    const longer = lengthened(triplets, triplets.notes[0]!, 1.3333, true);
    const back = lengthened(longer.sheet, longer.sheet.notes[0]!, 0.3333, true);
    expect(written(back.sheet)).toEqual(written(triplets));
  });

  it('names the places of the staff by the key: a published scale', () => {
    // D major: two sharps, F and C (any theory book; common practice, no source).
    const names = ['D4', 'E4', 'F#4', 'G4', 'A4', 'B4', 'C#5', 'D5'];
    expect(names.map((_, at) => nameAt('D major', placeOf('D4') + at))).toEqual(names);
    expect(nameAt('C minor', placeOf('E4'))).toBe('Eb4');
  });

  it('is the same passage after it has lain on the sheet, with a bar more to write in', () => {
    for (const choice of inventedPassages(12)) {
      const on = sheetOf(choice);
      expect(samePassage(choiceOn(on).passage, choice.passage)).toBe(true);
      expect(choiceOn(on).passage!.bars).toEqual(choice.passage!.bars);
      const bars = barsOf(drawnOf(on), null, ['right', 'left']);
      expect(bars).toHaveLength(Math.min(16, choice.passage!.bars.length + 1));
      expect(bars.every(({ parts }) => parts.length === 2)).toBe(true);
    }
    expect(barsOf(drawnOf(EMPTY_SHEET), null, ['right', 'left'])).toHaveLength(1);
  });

  it('with an upbeat begins in a short bar', () => {
    const upbeat = choiceOn({ ...LINE, upbeat: 1, time: { count: 3, unit: 4 } });
    expect(upbeat.passage!.bars.map(({ beats }) => beats)).toEqual([1, 3]);
    expect(exerciseOf(upbeat)!.steps.map(({ bar }) => bar)).toEqual([0, 1, 1]);
    expect(sheetOf(upbeat).upbeat).toBe(1);
  });

  it('can be drawn, and played where it has two moments, whatever was done to it', () => {
    const act = fc.tuple(fc.nat(8), fc.nat(40), fc.constantFrom(0.25, 1 / 3, 0.5, 1, 1.5, 4), fc.boolean());
    fc.assert(
      fc.property(fc.array(act, { maxLength: 25 }), (acts) => {
        let now: Sheet = LINE;
        for (const [kind, at, beats, onward] of acts) {
          const one = now.notes[at % Math.max(1, now.notes.length)];
          if (one === undefined || kind === 0)
            now = put(now, { ...note('B3 l 0 1'), beat: at / 2, beats }).sheet;
          else if (kind === 1) now = stepped(now, one, at - 20).sheet;
          else if (kind === 2) now = raised(now, one, onward ? 1 : -1).sheet;
          else if (kind === 3) now = lengthened(now, one, beats, onward).sheet;
          else if (kind === 4) now = handed(now, one).sheet;
          else if (kind === 5) now = taken(now, one).sheet;
          else if (kind === 6) now = withThird(now, one).sheet;
          else now = after(now, one, beats, onward).sheet;
        }
        barsOf(drawnOf(now), null, ['right', 'left']);
        const moments = new Set(now.notes.map(({ beat }) => Math.round(beat * 400)));
        const most = Math.max(
          0,
          ...[...moments].map((m) => now.notes.filter(({ beat }) => Math.round(beat * 400) === m).length),
        );
        if (moments.size >= 2 && most <= 10) expect(exerciseOf(choiceOn(now))).not.toBeNull();
      }),
      { numRuns: 60 },
    );
  });
});
