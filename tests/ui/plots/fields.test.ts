import { describe, expect, it } from 'vitest';
import { pointAt } from '../../../src/ui/plots/staff/fields.ts';
import type { StaffField } from '../../../src/ui/plots/staff/fields.ts';

const TREBLE: StaffField = {
  hand: 'right',
  clef: 'treble',
  fromX: 0,
  toX: 200,
  topLineY: 100,
  anchors: [
    { beat: 0, x: 40 },
    { beat: 1, x: 80 },
    { beat: 4, x: 200 },
  ],
};
const BASS: StaffField = { ...TREBLE, hand: 'left', clef: 'bass', topLineY: 224 };
const NEXT: StaffField = {
  ...TREBLE,
  fromX: 200,
  toX: 400,
  anchors: [
    { beat: 4, x: 210 },
    { beat: 8, x: 400 },
  ],
};
/** places by letters from C0 on: seven an octave */
const [C4, E4, F5, A3] = [28, 30, 38, 26];

describe('a touch on the staff', () => {
  it.each([
    // The lines of the treble clef are E G B D F, of the bass clef G B D F A (any theory book; common practice, no source).
    ['the highest line of the treble clef', 40, 100, { hand: 'right', beat: 0, place: F5 }],
    ['its lowest line, between two notes', 60, 140, { hand: 'right', beat: 0.5, place: E4 }],
    ['a ledger line below', 80, 150, { hand: 'right', beat: 1, place: C4 }],
    ['after the last note of a bar', 140, 140, { hand: 'right', beat: 2.5, place: E4 }],
    ['the highest line of the bass clef', 40, 224, { hand: 'left', beat: 0, place: A3 }],
    ['left of the first note', 3, 224, { hand: 'left', beat: 0, place: A3 }],
    ['the next bar', 305, 140, { hand: 'right', beat: 6, place: E4 }],
  ] as const)('at %s', (_, x, y, point) => expect(pointAt([TREBLE, BASS, NEXT], x, y)).toEqual(point));

  it('beside all bars is none', () => expect(pointAt([TREBLE, BASS], 250, 120)).toBeNull());
});
