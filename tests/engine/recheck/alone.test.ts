import { beforeAll, describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { learnPiano, listenAndKeep, mergePianos } from '../../../src/engine/listen/index.ts';
import type { HandsAlone, Heard, KeptSound } from '../../../src/engine/listen/index.ts';
import { apartDb, nameOfLook, readLook, writeLook } from '../../../src/engine/listen/piano/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import type { Alignment } from '../../../src/engine/match/index.ts';
import { handsAloneIn, recheck } from '../../../src/engine/recheck/index.ts';
import { assess, pianoAfter } from '../../../src/engine/index.ts';
import type { Assessment, PianoProfile } from '../../../src/engine/index.ts';
import { BOTH_TRIADS, triadsBy } from '../../support/hands-apart.ts';
import { render } from '../../support/render.ts';
import type { HomeKnobs, PianoName } from '../../support/render.ts';

const BOTH: ExerciseChoice = { key: 'G major', form: 'arpeggio', hands: 'together', octaves: 1 };
const HERE: Partial<HomeKnobs> = { room: { decaySec: 0.3, directDb: 4 } };
/** another room, a phone, another place in it */
const THERE: Partial<HomeKnobs> = { room: { decaySec: 0.9, directDb: -3 }, phone: true };

interface Listened {
  readonly heard: Heard;
  readonly sound: KeptSound;
  readonly alignment: Alignment;
}

/** The same seed is the same place in the room, and the same attempt of one hand; `velocity` makes another of it. */
async function play(
  hands: ExerciseChoice['hands'],
  home: Partial<HomeKnobs>,
  velocity = 66,
  seed = 11,
  piano: PianoName = 'dev',
): Promise<Listened> {
  const exercise = { ...BOTH, hands };
  const student = { leftHandDb: hands === 'together' ? 4 : 0, velocity, chordSpreadMs: 4 };
  const rendered = await render({ seed, piano, exercise, student, home });
  const { heard, sound } = listenAndKeep(rendered);
  return { heard, sound, alignment: matchNotes(heard, buildExercise(exercise)) };
}

const aloneIn = ({ heard, alignment, sound }: Listened): HandsAlone => handsAloneIn(heard, alignment, sound);

describe('hands alone, then both', () => {
  let left: Listened;
  let right: Listened;
  let both: Listened;
  beforeAll(async () => {
    left = await play('left', HERE);
    right = await play('right', HERE);
    both = await play('together', HERE);
  });

  it('shows each key struck, and the key an octave away that the other hand would strike', () => {
    const [first] = buildExercise({ ...BOTH, hands: 'left' }).steps[0]!.notes;
    const names = Object.keys(aloneIn(left));
    expect(names).toContain(nameOfLook([first!.midi], first!.midi));
    expect(names).toContain(nameOfLook([first!.midi], first!.midi + 12));
    expect(aloneIn(both)).toEqual({});
  });

  it('what an upper hand adds stands out against the lower hand alone, and what is not there does not', () => {
    const known = { ...aloneIn(left), ...aloneIn(right) };
    const odds = (alone: HandsAlone | null): readonly number[] =>
      recheck(both.heard, both.alignment, both.sound, alone)
        .rechecks.filter(({ asked, hand }) => asked === 'written' && hand === 'right')
        .map(({ logOdds }) => logOdds);
    const mean = (values: readonly number[]): number =>
      values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(odds(known)).not.toEqual(odds(null));
    expect(mean(odds(known))).toBeGreaterThan(mean(odds(null)));
  });

  it.each<[string, () => Promise<HandsAlone>]>([
    ['it was heard elsewhere', async () => aloneIn(await play('left', THERE))],
    [
      'it was heard from another place in the same room',
      async () => aloneIn(await play('left', HERE, 66, 12)),
    ],
    [
      'it was heard on another piano, from the same place',
      async () => aloneIn(await play('left', HERE, 66, 11, 'test')),
    ],
    ['too few of its keys are struck again to tell', async () => aloneIn(right)],
  ])('is left out of account where %s', async (_, heardBefore) => {
    const { heard, alignment, sound } = both;
    expect(recheck(heard, alignment, sound, await heardBefore())).toEqual(recheck(heard, alignment, sound));
  });

  it('both hands on the other piano let go what was learnt on this one', async () => {
    const there = await play('together', HERE, 66, 11, 'test');
    const known = { ...aloneIn(left), ...aloneIn(right) };
    const own = aloneIn(await play('left', HERE, 66, 11, 'test'));
    const by = (alone: HandsAlone | null) => recheck(there.heard, there.alignment, there.sound, alone);
    expect(by(known)).toEqual(by(null));
    expect(by(own)).not.toEqual(by(null));
  });

  it('the same keys heard from another place, or of another piano, take the place of the old ones; from the same, both stay', async () => {
    const before = learnPiano(left.heard, aloneIn(left))!;
    const again = await play('left', HERE, 72);
    const moved = await play('left', THERE, 72);
    const another = await play('left', HERE, 72, 11, 'test');
    const looks = (after: Listened): readonly number[] =>
      Object.values(mergePianos(before, learnPiano(after.heard, aloneIn(after))!).alone!).map(
        ({ length }) => length,
      );
    expect(new Set(looks(again))).toEqual(new Set([2]));
    expect(new Set(looks(moved))).toEqual(new Set([1]));
    expect(new Set(looks(another))).toEqual(new Set([1]));
  });
});

describe('an upper hand that is softer, chords an octave apart', () => {
  const unsureOf = (assessment: Assessment): number => {
    if (assessment.kind !== 'report') throw new Error(assessment.kind);
    return assessment.report.unsure.length;
  };

  it('leaves fewer notes unsure once both hands were heard alone, and as many where that was elsewhere', async () => {
    const sound = await triadsBy('together');
    const known = async (home: 'here' | 'elsewhere'): Promise<PianoProfile> => {
      let piano: PianoProfile | null = null;
      for (const hands of ['left', 'right'] as const) {
        const before = assess(await triadsBy(hands, home), { ...BOTH_TRIADS, hands }, { learnHands: true });
        piano = pianoAfter(piano, before);
      }
      return piano!;
    };
    const unsure = unsureOf(assess(sound, BOTH_TRIADS));
    expect(unsureOf(assess(sound, BOTH_TRIADS, { piano: await known('here') }))).toBeLessThan(unsure);
    expect(unsureOf(assess(sound, BOTH_TRIADS, { alone: (await known('elsewhere')).alone! }))).toBe(unsure);
  });
});

describe('a look that is kept', () => {
  const levels = Float32Array.from({ length: 192 }, (_, index) => Math.sin(index) * 1.2 + 1);

  it('is read as it was, to a fifth of a dB', () => {
    readLook(writeLook(levels)).forEach((level, index) =>
      expect(Math.abs(level - levels[index]!) * 20).toBeLessThanOrEqual(0.2),
    );
  });

  it('lies apart from another by what loudness does not explain, where no other key covers it', () => {
    const alone = { midi: 48, others: [], before: levels };
    const louder = levels.map((level) => level + 0.3);
    expect(apartDb({ ...alone, now: louder })).toBeCloseTo(0, 4);
    const uneven = levels.map((level, index) => level + (index % 2) * 0.6);
    expect(apartDb({ ...alone, now: uneven })).toBeGreaterThan(4);
    // A string an octave above has every second partial: those were made louder.
    expect(apartDb({ ...alone, others: [60], now: uneven })).toBeCloseTo(0, 4);
    expect(apartDb({ ...alone, before: new Float32Array(192).fill(-2.5), now: levels })).toBeNull();
  });
});
