import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { createLook } from '../../../../src/engine/recheck/look/index.ts';
import type { Look } from '../../../../src/engine/recheck/look/index.ts';
import { stripsOf } from '../../../../src/engine/recheck/look/strips.ts';
import {
  HELD,
  heldFrames,
  lookThrough,
  roomFor,
  VIEWS,
  windowsFor,
} from '../../../../src/engine/recheck/look/views.ts';
import { createSums } from '../../../../src/engine/sums/index.ts';
import { referenceSound } from '../../listen/network/sound.ts';

interface Case {
  readonly midi: number;
  readonly timeSec: number;
  readonly untilSec: number;
  readonly strips: readonly number[];
  readonly levels: readonly (readonly number[])[];
  readonly out: readonly [number, number, number];
  /** beside the first two other cases as its twins */
  readonly besideTwins: readonly [number, number, number];
  /** beside the levels of a fourth case as the other hand's alone; beside all of these and the last case's as its own alone */
  readonly besideOther: readonly [number, number, number];
  readonly besideAll: readonly [number, number, number];
}

// The trainer's own definitions, computed by numpy (src/training/look/export.py); nothing in common with our code.
const { cases } = JSON.parse(readFileSync(new URL('./reference.json', import.meta.url), 'utf8')) as {
  readonly cases: readonly Case[];
};
const CENTS = -15;
const GAIN = 1.25;
const RATE_HZ = 22_050;
const samples = Float32Array.from(referenceSound());
const look = createLook(samples);

const KINDS = ['wasm', 'plain'] as const;
const both = cases.flatMap((one) => KINDS.map((kind) => ({ ...one, kind })));

test.each(both)(
  'key $midi at $timeSec s is seen as numpy sees it ($kind)',
  ({ kind, midi, timeSec, untilSec, strips, levels }) => {
    const sums = createSums(kind);
    expect(sums.kind).toBe(kind);
    const room = roomFor(sums);
    const freqsHz = stripsOf(midi, CENTS);
    freqsHz.forEach((freqHz, index) => expect(freqHz).toBeCloseTo(strips[index]!, 3));
    VIEWS.forEach((view, index) => {
      const windows = windowsFor(sums, view, freqsHz);
      const centre = Math.round(timeSec * RATE_HZ);
      const wanted = { from: 0, to: index === HELD ? heldFrames(untilSec) : view.frames };
      const seen = lookThrough(sums, room, view, samples, centre, GAIN, windows, wanted);
      expect(seen.length).toBe(levels[index]!.length);
      seen.forEach((level, at) => expect(Math.abs(level - levels[index]![at]!)).toBeLessThan(2e-4));
    });
  },
);

const glances = cases.map(({ midi, timeSec, untilSec }) =>
  look.once({
    timeSec,
    midi,
    cents: CENTS,
    gain: GAIN,
    written: [57, 61, 69],
    before: { midis: [52, 57], sinceSec: 0.3 },
    after: { midis: [60, 64], untilSec },
    told: (semitones) =>
      semitones === 0 ? { probability: 0.4, apartSec: 0.012, loudnessDb: 3, sounding: 0.7 } : null,
    ownHand: { belief: 1.5, loudnessDb: -2 },
    otherHand: null,
  }),
);

function expectNear({ logOdds, timeSec, spreadSec }: Look, askedSec: number, out: Case['out']): void {
  expect(logOdds).toBeCloseTo(out[0], 1);
  expect((timeSec - askedSec) * 100).toBeCloseTo(out[1], 1);
  expect(Math.log(spreadSec * 100)).toBeCloseTo(Math.min(Math.max(out[2], -3), 3), 1);
}

cases.forEach(({ midi, timeSec, out, besideTwins, besideOther, besideAll }, index) => {
  test(`key ${midi} at ${timeSec} s is judged as numpy judges it`, () =>
    expectNear(glances[index]!, timeSec, out));

  test(`key ${midi} at ${timeSec} s beside two others is judged as numpy judges it`, () => {
    const [one, other] = glances.filter((_, place) => place !== index);
    expectNear(
      look.beside(glances[index]!, [one!, other!], { other: null, own: null }),
      timeSec,
      besideTwins,
    );
  });

  test(`key ${midi} at ${timeSec} s beside hands apart is judged as numpy judges it`, () => {
    const [one, two, third, fourth] = glances.filter((_, place) => place !== index);
    const [other, own] = [third!, fourth!].map(({ glimpse }) => glimpse.levels);
    expectNear(look.beside(glances[index]!, [], { other: other!, own: null }), timeSec, besideOther);
    expectNear(look.beside(glances[index]!, [one!, two!], { other: other!, own: own! }), timeSec, besideAll);
  });
});

test('a key looked at for hands apart shows what a whole look shows', () => {
  glances.forEach(({ glimpse }, index) => {
    const { midi, timeSec } = cases[index]!;
    expect(look.levelsAt({ midi, timeSec, cents: CENTS, gain: GAIN })).toEqual(glimpse.levels);
  });
});
