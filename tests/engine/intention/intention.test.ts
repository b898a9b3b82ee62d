import { describe, expect, it } from 'vitest';
import {
  assessHeard,
  buildExercise,
  exerciseIn,
  oneWay,
  tellWords,
  waysIn,
} from '../../../src/engine/index.ts';
import type { ExerciseChoice, Heard, Intention, PianoProfile, Report } from '../../../src/engine/index.ts';
import { assessPractised, isTold, recordOf } from '../../bench/intention/judge.ts';
import { practisedAttempt } from '../../bench/intention/players.ts';
import { WORKS } from '../../bench/intention/works.ts';
import { practisedExercise } from '../../../src/engine/exercise/index.ts';

const CHOICE = { key: 'C major', form: 'scale', hands: 'right', octaves: 1 } as const;
const STRETCH = { fromStep: 2, toStep: 6 };

/** Keys struck at these moments, seconds, as an ear without error hears them. */
function heardAs(midis: readonly number[], timesSec: readonly number[]): Heard {
  const endSec = timesSec.at(-1)! + 1;
  return {
    notes: midis.map((midi, at) => ({
      timeSec: timesSec[at]!,
      midi,
      cents: 0,
      levelDb: -20,
      confidence: 1,
      releaseSec: null,
    })),
    tuning: { cents: 0, a4Hz: 440, sdCents: 0, strays: [] },
    findings: [],
    passages: [{ startSec: 0, endSec }],
    durationSec: endSec,
    sampleRateHz: 44_100,
    onsetSdMs: 0,
  };
}

function reportOf(heard: Heard, intention: Intention, piano: PianoProfile | null = null): Report {
  const assessment = assessHeard(heard, CHOICE, { intention, piano });
  if (assessment.kind !== 'report') throw new Error(assessment.kind);
  return assessment.report;
}

/** Onsets of so many notes one after the other, each as long as the pattern says, over and over; and after `every` a breath more. */
function onsets(
  count: number,
  pattern: readonly number[],
  every = Infinity,
  breathSec = 0,
): readonly number[] {
  let sec = 0.5;
  return Array.from({ length: count }, (_, at) => {
    const now = sec + Math.floor(at / every) * breathSec;
    sec += pattern[(at % every) % pattern.length]!;
    return now;
  });
}

const SCALE = [60, 62, 64, 65, 67, 69, 71, 72, 71, 69, 67, 65, 64, 62, 60];
const PART = SCALE.slice(2, 7);

describe('an intention written out', () => {
  it.each([
    ['a stretch twice, a breath between', 'even', STRETCH, 2, [0, 0.5, 1, 1.5, 2, 3, 3.5, 4, 4.5, 5]],
    ['long–short, a dotted note and its rest', 'long-short', STRETCH, 1, [0, 0.75, 1, 1.75, 2]],
    ['short–long', 'short-long', STRETCH, 1, [0, 0.25, 1, 1.25, 2]],
    ['threes, the first held', 'groups-of-3', STRETCH, 1, [0, 1, 1.5, 2, 3]],
    ['a stop before the thumb', 'stop-before-crossings', STRETCH, 1, [0, 1, 1.5, 2, 2.5]],
  ] as const)('has its notes where they belong: %s', (_, rhythm, stretch, repeats, beats) => {
    const { steps } = practisedExercise(CHOICE, { intention: { stretch, times: 1, rhythm }, repeats });
    expect(steps.map(({ beat }) => beat)).toEqual(beats);
    expect(steps.map(({ step }) => step)).toEqual(beats.map((_, at) => at));
  });
});

describe('what can be written out besides', () => {
  const written = (choice: ExerciseChoice, intention: Intention, repeats: number) =>
    practisedExercise(choice, { intention, repeats }).steps.map(({ notes, copy, pauseBefore }) => ({
      midis: notes.map(({ midi }) => midi),
      copy: copy!.number,
      pause: pauseBefore === true,
    }));

  it('one note more each time: each length so often', () => {
    const steps = written(CHOICE, { stretch: STRETCH, times: 2, rhythm: 'one-note-more' }, 5);
    expect(steps.map(({ copy }) => copy)).toEqual([0, 0, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4, 4]);
    expect(steps.flatMap(({ midis }) => midis).slice(-4)).toEqual([64, 65, 67, 69]);
  });

  it('hand positions as chords: thumb under begins one, and the position at the top comes once', () => {
    const arpeggio = { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 2 } as const;
    const steps = written(arpeggio, { times: 1, rhythm: 'even', blocked: true }, 1);
    expect(steps.map(({ midis }) => midis)).toEqual([
      [60, 64, 67],
      [72, 76, 79, 84],
      [60, 64, 67],
    ]);
    expect(steps.map(({ pause }) => pause)).toEqual([false, true, true]);
  });

  it.each([
    ['the whole up', 'up', undefined, { fromStep: 0, toStep: 7 }],
    ['the whole down', 'down', undefined, { fromStep: 7, toStep: 14 }],
    ['a stretch of the way up, down', 'down', { fromStep: 2, toStep: 6 }, { fromStep: 8, toStep: 12 }],
    ['a stretch of the way down, up', 'up', { fromStep: 8, toStep: 12 }, { fromStep: 2, toStep: 6 }],
    ['a stretch round the top, up', 'up', { fromStep: 4, toStep: 9 }, { fromStep: 4, toStep: 7 }],
    ['a stretch of the way up, up', 'up', { fromStep: 2, toStep: 6 }, { fromStep: 2, toStep: 6 }],
  ] as const)('one way: %s', (_, way, stretch, expected) => {
    expect(oneWay(buildExercise(CHOICE), way, stretch)).toEqual(expected);
  });

  it('no way where nothing turns back', () => {
    const progression = buildExercise({ ...CHOICE, form: 'progression' });
    expect(waysIn(progression)).toEqual([]);
    expect(oneWay(progression, 'up')).toBeNull();
  });
});

describe('an attempt at an intention', () => {
  it('counts its repeats, and misses no note outside the stretch', () => {
    const played = [...PART, ...PART, ...PART];
    const report = reportOf(heardAs(played, onsets(15, [0.4], 5, 1.3)), {
      stretch: STRETCH,
      times: 3,
      rhythm: 'even',
    });
    expect(report.practised?.repeats).toBe(3);
    expect(report.missed).toEqual([]);
    expect(report.notes.every(({ verdict }) => verdict === 'correct')).toBe(true);
    expect(report.remarks).toEqual([]);
    expect(report.measures.evennessPercent).toMatchObject({ value: expect.closeTo(0, 6) as number });
    expect(report.words.verdict).toBe('Done: three times in a row every note right.');
    expect(exerciseIn(report).steps).toHaveLength(15);
  });

  it('is even about the rhythm as it was played, and its ratio is told', () => {
    const report = reportOf(heardAs(SCALE, onsets(15, [0.42, 0.2])), { times: 1, rhythm: 'long-short' });
    expect(report.practised?.longToShort).toBeCloseTo(2.1, 6);
    expect(report.measures.evennessPercent).toMatchObject({ value: expect.closeTo(0, 6) as number });
    expect(report.words.verdict).toBe('Done: every note right, long–short 2.1 : 1 (meant 3 : 1).');
  });

  it('has the same spread about a rhythm as the same strays have about even notes', () => {
    const stray = (sec: number, at: number): number => sec + (at % 3 === 1 ? 0.02 : 0);
    const even = reportOf(heardAs(SCALE, onsets(15, [0.3]).map(stray)), { times: 1, rhythm: 'even' });
    const dotted = reportOf(heardAs(SCALE, onsets(15, [0.45, 0.15]).map(stray)), {
      times: 1,
      rhythm: 'long-short',
    });
    const [a, b] = [even, dotted].map(({ measures }) =>
      'value' in measures.evennessPercent ? measures.evennessPercent.value : NaN,
    ) as [number, number];
    // The ratio that was played is fitted too, which takes a little of the spread.
    expect(b).toBeLessThanOrEqual(a + 0.1);
    expect(b).toBeGreaterThan(0.75 * a);
  });

  it.each([
    [
      'even where long–short was meant',
      'long-short',
      [0.3],
      'Not yet: hardly long–short: 1.0 : 1, meant 3 : 1',
    ],
    ['the other way round', 'long-short', [0.15, 0.45], 'Not yet: the other way round than long–short'],
    ['no held notes', 'groups-of-4', [0.3], 'Not yet: the first of each group of four is hardly held'],
    ['no stop', 'stop-before-crossings', [0.3], 'Not yet: hardly a stop is made'],
  ] as const)('is told what is missing: %s', (_, rhythm, pattern, sentence) => {
    const report = reportOf(heardAs(SCALE, onsets(15, pattern)), { times: 1, rhythm });
    expect(report.words.verdict).toBe(`${sentence}.`);
  });

  it('is the whole where the whole was played', () => {
    const report = reportOf(heardAs(SCALE, onsets(15, [0.3])), {
      stretch: STRETCH,
      times: 3,
      rhythm: 'even',
    });
    expect(report.practised?.repeats).toBe(0);
    expect(report.missed).toEqual([]);
    expect(report.words.verdict).toMatch(/^Not yet: you played the whole; only a stretch of it was meant/);
  });

  it('counts on where the attempt before it in the sitting left off', () => {
    const intention: Intention = { stretch: STRETCH, times: 3, rhythm: 'even' };
    const twice = reportOf(heardAs([...PART, ...PART], onsets(10, [0.4], 5, 0.6)), intention);
    expect(twice.words.verdict).toBe('Nearly: right twice in a row; three times was meant.');
    const assessment = assessHeard(heardAs(PART, onsets(5, [0.4])), CHOICE, {
      intention,
      earlier: [twice],
      sitting: 1,
    });
    expect(assessment).toMatchObject({
      report: { words: { verdict: 'Done: three times in a row every note right.' } },
    });
  });

  it('leads back: rhythm, even, with what comes before, the whole', () => {
    const intention: Intention = { stretch: { fromStep: 8, toStep: 13 }, times: 1, rhythm: 'long-short' };
    const notes = SCALE.slice(8, 14);
    const first = reportOf(heardAs(notes, onsets(6, [0.6, 0.2])), intention);
    expect(first.words.practice?.intention).toMatchObject({ ...intention, rhythm: 'even' });
    const second = reportOf(heardAs(notes, onsets(6, [0.4])), first.words.practice!.intention!);
    expect(second.words.practice?.intention?.stretch).toEqual({ fromStep: 2, toStep: 13 });
    const third = reportOf(heardAs(SCALE.slice(2, 14), onsets(12, [0.4])), second.words.practice!.intention!);
    expect(third.words.practice).toMatchObject({ fromStep: 0, toStep: 14 });
    expect(third.words.practice?.intention).toEqual({ times: 1, rhythm: 'even' });
  });
});

describe('a ladder of tempi', () => {
  const ladder: Intention = { times: 1, rhythm: 'even', ladderBpm: 4 };
  const rung = (timesSec: readonly number[], targetBpm: number) => {
    const assessment = assessHeard(heardAs(SCALE, timesSec), CHOICE, { intention: ladder, targetBpm });
    if (assessment.kind !== 'report') throw new Error(assessment.kind);
    const { verdict, practice, nextStep } = assessment.report.words;
    return { verdict, nextStep, tempoBpm: practice?.tempoBpm, ladderBpm: practice?.intention?.ladderBpm };
  };

  it('goes on by a rung where it was even at its tempo', () => {
    expect(rung(onsets(15, [0.5]), 60)).toMatchObject({
      verdict: 'Done: every note right.',
      tempoBpm: 64,
      ladderBpm: 4,
    });
    expect(rung(onsets(15, [0.5]), 60).nextStep).toMatch(/^the next rung: .*♩ = 64/);
  });

  it('stays where it was slower than its rung', () => {
    expect(rung(onsets(15, [0.5]), 72)).toMatchObject({
      verdict: 'Nearly: at ♩ = 60, where 72 was meant.',
      tempoBpm: 72,
    });
  });

  it('goes two back, and is over, where it is uneven', () => {
    const uneven = onsets(15, [0.375]).map(
      (sec, at) => sec + [0, 0.09, -0.07, 0.05, 0.11, -0.08, 0.02][at % 7]!,
    );
    const told = rung(uneven, 80);
    expect(told).toMatchObject({ tempoBpm: 72, ladderBpm: undefined });
    expect(told.nextStep).toMatch(/^two rungs back, and stay there for now: .*♩ = 72/);
  });
});

describe('touch and loudness that were meant', () => {
  /** C major up and down, each note held for so long a share of the time to the next, and so much louder. */
  const heardSo = (share: number, louderDb: (at: number) => number, released = true): Heard => {
    const heard = heardAs(SCALE, onsets(15, [0.5]));
    return {
      ...heard,
      notes: heard.notes.map((note, at) => ({
        ...note,
        levelDb: note.levelDb + louderDb(at),
        releaseSec: released ? note.timeSec + share * 0.5 : null,
      })),
    };
  };
  const told = (heard: Heard, intention: Partial<Intention>, piano: PianoProfile | null = null): string =>
    reportOf(heard, { times: 1, rhythm: 'even', ...intention }, piano).words.verdict;
  const level = (): number => 0;
  const grown = (at: number): number => (10 * at) / 14;

  it.each([
    ['legato', 1.04, 'Done: every note right, legato.'],
    ['legato', 0.4, 'Not yet: legato was meant: 300 ms are silent between the notes.'],
    ['staccato', 0.35, 'Done: every note right, staccato.'],
    ['staccato', 1.02, 'Not yet: staccato was meant: the notes run into each other.'],
    ['detached', 0.72, 'Done: every note right, detached.'],
    ['detached', 1.1, 'Not yet: detached was meant: the notes run into each other.'],
    // Between both nothing is sure: dampers are heard to some 30 ms.
    ['legato', 0.85, 'Done: every note right (the touch cannot be told here).'],
  ] as const)('%s, a note sounding for %s of its time', (touch, share, sentence) => {
    expect(told(heardSo(share, level), { touch })).toBe(sentence);
  });

  it('says nothing of the touch where no damper is heard, as with the pedal', () => {
    expect(told(heardSo(0.4, level, false), { touch: 'legato' })).toBe(
      'Done: every note right (the touch cannot be told here).',
    );
  });

  it.each([
    ['growing', grown, 'Done: every note right, growing louder by 10 dB.'],
    ['growing', level, 'Not yet: it was to grow louder: +0.0 dB from first to last.'],
    ['fading', grown, 'Not yet: it was to grow softer: +10.0 dB from first to last.'],
    ['growing', (at: number) => 10 * (at / 14) ** 4, 'Done: every note right, growing louder by 8 dB.'],
    [
      'accents-of-3',
      (at: number) => (at % 3 === 0 ? 5 : 0),
      'Done: every note right, the accents 5.0 dB louder.',
    ],
    ['accents-of-3', level, 'Not yet: the accents are hardly heard: +0.0 dB.'],
    ['f', level, 'Done: every note right (how loud cannot be told here).'],
  ] as const)('%s', (loudness, louder, sentence) => {
    const heard = heardSo(1, louder);
    expect(told(heard, { loudness })).toBe(sentence);
  });

  it('tells growing on one way, and how straight, of a piano whose keys are known', () => {
    const keyDb = (midi: number): number => (7 * midi) % 5;
    const levelOf = (midi: number) => ({ levelDb: { value: keyDb(midi), plusMinus: 0.3, count: 20 } });
    const piano: PianoProfile = {
      version: 1,
      tuningCents: { value: 0, plusMinus: 1, count: 100 },
      keys: Object.fromEntries(SCALE.map((midi) => [midi, levelOf(midi)])),
    };
    const up = heardAs(SCALE.slice(0, 8), onsets(8, [0.5]));
    const grown = (of: (share: number) => number) => ({
      ...up,
      notes: up.notes.map((note, at) => ({
        ...note,
        levelDb: -20 + keyDb(note.midi) + 10 * of(at / 7),
      })),
    });
    const intention = { stretch: { fromStep: 0, toStep: 7 }, loudness: 'growing' } as const;
    expect(
      told(
        grown((share) => share),
        intention,
        piano,
      ),
    ).toBe('Done: every note right, growing louder by 10 dB.');
    expect(
      told(
        grown((share) => share ** 3),
        intention,
        piano,
      ),
    ).toMatch(/dB, most of it late\.$/);
    expect(
      told(
        grown((share) => 1 - (1 - share) ** 3),
        intention,
        piano,
      ),
    ).toMatch(/dB, most of it early\.$/);
  });

  it('tells no growing on one way of a piano that is not known', () => {
    const up = heardAs(SCALE.slice(0, 8), onsets(8, [0.5]));
    const louder = { ...up, notes: up.notes.map((note, at) => ({ ...note, levelDb: -20 + at })) };
    expect(told(louder, { stretch: { fromStep: 0, toStep: 7 }, loudness: 'growing' })).toBe(
      'Done: every note right (how loud cannot be told here).',
    );
  });
});

describe('an attempt of which nobody said how it was meant', () => {
  const plain = (notes: readonly number[], timesSec: readonly number[]) => {
    const choice = { key: 'C major', form: 'scale', hands: 'right', octaves: 2 } as const;
    const assessment = assessHeard(heardAs(notes, timesSec), choice);
    if (assessment.kind !== 'report') throw new Error(assessment.kind);
    return assessment.report.words;
  };
  const up = [60, 62, 64, 65, 67, 69, 71, 72, 74, 76, 77, 79, 81, 83, 84];
  const TWO_OCTAVES = [...up, ...up.slice(0, -1).reverse()];

  it.each([
    [3, 'in threes'],
    [4, 'in fours'],
    [6, 'in sixes'],
  ])('is asked about a held note every %i, never blamed for it', (size, said) => {
    for (const place of [0, size - 1]) {
      const pattern = Array.from({ length: size }, (_, at) => (at === place ? 0.8 : 0.3));
      const words = plain(TWO_OCTAVES, onsets(29, pattern));
      expect(words.verdict).toBe(`Every note right. Played ${said}, the first of each held: meant so?`);
    }
  });

  it('is not asked where only some are long: that is uneven', () => {
    const lengths = onsets(29, [0.3]).map(
      (sec, at) => sec + 0.5 * [3, 8, 9, 15, 21].filter((one) => one < at).length,
    );
    expect(plain(TWO_OCTAVES, lengths).verdict).not.toMatch(/meant so/);
  });
});

describe('what is said in German', () => {
  const german = (report: Report) => tellWords(report.words, { language: 'de', naming: 'german' });

  it.each([
    ['done', [0.42, 0.2], 'Geschafft: jeder Ton richtig, lang–kurz 2,1 : 1 (gemeint 3 : 1).'],
    ['another rhythm', [0.3], 'Noch nicht: kaum lang–kurz: 1,0 : 1, gemeint 3 : 1.'],
    ['turned', [0.15, 0.45], 'Noch nicht: umgekehrt als lang–kurz.'],
  ] as const)('of a rhythm: %s', (_, pattern, sentence) => {
    const report = reportOf(heardAs(SCALE, onsets(15, pattern)), { times: 1, rhythm: 'long-short' });
    expect(german(report).verdict).toBe(sentence);
  });

  it('of a stretch, and what comes then', () => {
    const intention: Intention = { stretch: STRETCH, times: 3, rhythm: 'even' };
    const told = german(reportOf(heardAs([...PART, ...PART], onsets(10, [0.4], 5, 0.6)), intention));
    expect(told.verdict).toBe('Fast: zweimal hintereinander richtig; gemeint war dreimal.');
    expect(told.nextStep).toBe(
      'nur E–F–G–A–H, ♩ = 75, zwei Töne auf jeden Schlag, gleichmäßig, dreimal hintereinander.',
    );
  });
});

describe('players who were to practise something', () => {
  it.each(WORKS.map((work) => [work.name, work] as const))('are judged by it: %s', async (_, work) => {
    for (const index of [1, 2]) {
      const well = practisedAttempt(work, index, false);
      const done = recordOf(well, await assessPractised(well, 'exact'));
      expect(done, done.sentence).toMatchObject({ outcome: 'done', blamed: [], counted: true });
    }
    const badly = practisedAttempt(work, 1, true);
    const record = recordOf(badly, await assessPractised(badly, 'exact'));
    expect(isTold(record), `${record.flaw}: ${record.sentence}`).toBe(true);
  });
});
