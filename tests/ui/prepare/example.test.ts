import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/index.ts';
import type { Intention } from '../../../src/engine/index.ts';
import { exampleOf } from '../../../src/ui/prepare/example.ts';

const SCALE = buildExercise({ key: 'C major', form: 'scale', hands: 'right', octaves: 1 });
const PART = { fromStep: 0, toStep: 3 };
/** At 60 beats a minute a beat is a second, and a step of a scale half of one. */
const at = (intention: Partial<Intention> | null, exercise = SCALE) => {
  const meant = intention === null ? null : { times: 3, rhythm: 'even' as const, ...intention };
  const { tones, clicksSec } = exampleOf(exercise, meant, 60);
  const startSec = tones[0]!.timeSec;
  return {
    clicksSec,
    startSec,
    beats: tones.map(({ timeSec }) => Number((timeSec - startSec).toFixed(3))),
    held: tones.map(({ holdSec }) => Number(holdSec.toFixed(3))),
    louderDb: tones.map(({ louderDb }) => louderDb),
    midis: tones.map(({ midi }) => midi),
  };
};

describe('how something to be practised sounds', () => {
  it('is counted in by four beats at its tempo, and comes once', () => {
    const { clicksSec, startSec, midis } = at({ stretch: PART });
    expect(clicksSec.map((sec) => Number((startSec - sec).toFixed(6)))).toEqual([4, 3, 2, 1]);
    expect(midis).toEqual([60, 62, 64, 65]);
  });

  it.each([
    ['as it is written', {}, [0, 0.5, 1, 1.5]],
    ['long–short, three to one', { rhythm: 'long-short' }, [0, 0.75, 1, 1.75]],
    ['in twos, the first held', { rhythm: 'groups-of-2' }, [0, 1, 1.5, 2.5]],
    ['one note more each time', { rhythm: 'one-note-more' }, [0, 0.5, 1.5, 2, 2.5, 3.5, 4, 4.5, 5]],
  ] as const)('has its rhythm: %s', (_, intention, beats) => {
    expect(at({ stretch: PART, ...intention }).beats).toEqual(beats);
  });

  it('is short where staccato is meant, and lets go before a stop', () => {
    expect(at({ stretch: PART, touch: 'staccato' }).held.slice(0, 3)).toEqual([0.2, 0.2, 0.2]);
    expect(at({ stretch: PART, rhythm: 'stop-on-each-step' }).held.slice(0, 3)).toEqual([0.49, 0.49, 0.49]);
    expect(at({ stretch: PART, rhythm: 'groups-of-2' }).held.slice(0, 2)).toEqual([0.98, 0.49]);
  });

  it('is as loud as it is meant', () => {
    expect(at({ stretch: PART, loudness: 'growing' }).louderDb).toEqual([-6, -2, 2, 6]);
    expect(at({ stretch: PART, loudness: 'accents-of-2' }).louderDb).toEqual([6, 0, 6, 0]);
    expect(new Set(at({ loudness: 'p' }).louderDb)).toEqual(new Set([-9]));
  });

  it('strikes hand positions as chords', () => {
    const arpeggio = buildExercise({ key: 'C major', form: 'arpeggio', hands: 'right', octaves: 1 });
    expect(at({ blocked: true }, arpeggio).midis).toEqual([60, 64, 67, 72]);
  });
});
