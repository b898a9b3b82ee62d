import { describe, expect, it } from 'vitest';
import { measureLines } from '../../../src/ui/report/lines.ts';
import { tableRows } from '../../../src/ui/report/table.ts';
import { remarkLines, splitVerdict } from '../../../src/ui/report/words.ts';
import { invent, INVENTED } from '../support/invent.ts';

const plain = (text: string): string => text.replaceAll('\u202f', ' ');
const lines = (name: keyof typeof INVENTED) => {
  const { report, exercise } = invent(INVENTED[name]);
  return new Map(measureLines(report, exercise).map((line) => [line.term, line]));
};

const handsApart = (leadMs: number, plusMinus: number) => ({
  togetherness: {
    leadMs: { value: leadMs, plusMinus },
    apartSdMs: { value: 9 },
    steps: [],
    leftLouderDb: { value: 1 },
  },
});

describe('the list of measures', () => {
  // Invented data.
  it('reads as in the look', () => {
    const told = lines('lateThumb');
    expect(plain(told.get('Notes')!.figure)).toBe('13 of 13, none extra');
    expect(plain(told.get('Variation of time')!.figure)).toBe('9.4 % ± 0.4; without the crossings 4.1 %');
    expect(plain(told.get('Crossings')!.figure)).toMatch(/^\+92 ms and \+84 ms going up; .* coming down$/);
    expect(plain(told.get('Variation of loudness')!.figure)).toBe(
      '± 1.8 dB, as it sounds here; the thumb 1.1 dB louder than the others',
    );
    expect(plain(told.get('Tempo')!.figure)).toBe('♩ = 77 (aim 80), steady');
    expect(plain(told.get('The piano')!.figure)).toBe('A = 437.2 Hz, 11 cents flat');
  });

  it('says with the variation up to how much is even at this tempo, as the report was judged', () => {
    const { report, exercise } = invent(INVENTED.lateThumb);
    const measures = { ...report.measures, evenUpToPercent: 5.62 };
    const [, even] = measureLines({ ...report, measures }, exercise);
    expect(plain(even!.figure)).toBe(
      '9.4 % ± 0.4; without the crossings 4.1 %; up to 5.6 % is even at this tempo',
    );
  });

  it('counts what went otherwise', () => {
    expect(lines('together').get('Notes')!.figure).toBe('12 of 14, 1 wrong, 1 missed and 1 extra');
  });

  it('sums many crossings up', () => {
    expect(plain(lines('longScale').get('Crossings')!.figure)).toMatch(/^−9 to \+1900 ms going up; /);
  });

  it('has chords where there are chords, and touch where there are none', () => {
    expect([...lines('progression').keys()]).toContain('Chords struck as one');
    expect([...lines('progression').keys()]).not.toContain('Touch');
    expect([...lines('lateThumb').keys()]).toContain('Touch');
  });

  it.each([
    [60, 25, 'connected: notes overlap by 60 ms'],
    [-90, 30, 'detached: gaps of 90 ms'],
    [-3, 30, 'connected or just apart (± 30 ms)'],
    [60, 30, 'connected or just apart (± 30 ms)'],
  ])('names a touch of %d ± %d ms only where it is sure', (value, plusMinus, figure) => {
    const { report, exercise } = invent(INVENTED.lateThumb);
    const measures = { ...report.measures, touchMs: { value, plusMinus } };
    const touch = measureLines({ ...report, measures }, exercise).find(({ term }) => term === 'Touch')!;
    expect(plain(touch.figure)).toBe(figure);
  });

  it('says nothing of a thumb that may be as loud as the others', () => {
    const { report, exercise } = invent(INVENTED.lateThumb);
    const measures = { ...report.measures, thumbAccentDb: { value: 2.5, plusMinus: 1.2 } };
    const all = measureLines({ ...report, measures }, exercise);
    const loudness = all.find(({ term }) => term === 'Variation of loudness')!;
    expect(plain(loudness.figure)).toBe('± 1.8 dB, as it sounds here');
  });

  it('says of chords how they change and how their inner notes sound, of two hands which comes first', () => {
    const { report, exercise } = invent(INVENTED.progression);
    const measures = {
      ...report.measures,
      changeHesitationRatio: { value: 1.32 },
      changeGapMs: { value: 140, plusMinus: 20 },
      innerBalanceDb: { value: -2.4, plusMinus: 0.5 },
      togetherness: {
        leadMs: { value: -18.2, plusMinus: 2.1 },
        apartSdMs: { value: 9.4 },
        steps: [],
        leftLouderDb: { value: 1 },
      },
    };
    const told = new Map(
      measureLines({ ...report, measures }, exercise).map((line) => [line.term, plain(line.figure)]),
    );
    expect(told.get('Changes of chord')).toBe(
      'the slowest takes 1.3 times the usual; 140 ms of silence between chords',
    );
    expect(told.get('Inner notes')).toBe('2.4 dB softer than the outer');
    expect(told.get('Hands together')).toBe('left first by 18 ms ± 2; varies by 9 ms');
  });

  it.each([
    [
      'Changes of chord',
      { changeHesitationRatio: { value: 1.3 }, changeGapMs: { value: 40, plusMinus: 30 } },
      'the slowest takes 1.3 times the usual; chords connected or just apart (± 30 ms)',
    ],
    [
      'Inner notes',
      { innerBalanceDb: { value: -1.9, plusMinus: 1 } },
      'louder or softer than the outer (± 1.0 dB)',
    ],
    ['Hands together', handsApart(6, 3), 'neither surely first (± 3 ms); varies by 9 ms'],
  ])('of %s names no side that is not sure', (term, unsure, figure) => {
    const { report, exercise } = invent(INVENTED.togetherProgression);
    const measures = { ...report.measures, ...unsure };
    const told = measureLines({ ...report, measures }, exercise).find((line) => line.term === term)!;
    expect(plain(told.figure)).toBe(figure);
  });

  it('says why a figure is not there', () => {
    const line = lines('progression').get('Changes of chord')!;
    expect(line.measured).toBe(false);
    expect(line.figure).toMatch(/^not measured: This invented/);
  });

  it('explains every figure', () => {
    for (const name of ['longScale', 'togetherProgression'] as const)
      for (const { meaning, definition } of lines(name).values()) {
        expect(meaning).toMatch(/\.$/);
        expect(definition).toMatch(/\.$/);
      }
  });
});

describe('a verdict', () => {
  it.each([
    ['It is late going up.', 'going up', ['It is late ', 'going up', '.']],
    ['It is late.', '', ['It is late.', '', '']],
    ['It is late.', 'not in it', ['It is late.', '', '']],
    ['Late again, late.', 'Late', ['', 'Late', ' again, late.']],
  ])('%s with "%s" underlined', (verdict, emphasis, pieces) => {
    const { before, emphasis: underlined, after } = splitVerdict(verdict, emphasis);
    expect([before, underlined, after]).toEqual(pieces);
  });
});

it('the table has every note, the missed ones in their places', () => {
  const { report, exercise } = invent(INVENTED.longScale);
  const rows = tableRows(report, exercise);
  expect(rows).toHaveLength(57 + 1);
  expect(rows[10]).toMatchObject({ heard: 'missed', timeSec: null });
  expect(rows.filter((row) => row.heard.startsWith('wrong'))).toHaveLength(1);
  const [unsure, ...others] = rows.filter((row) => row.heard.startsWith('not sure'));
  expect(others).toEqual([]);
  expect(unsure!.name).toMatch(/^[A-G][♯♭]?\d$/);
});

it('a wrong note stands in the table by the note that is written, and the hand beside it', () => {
  const { report, exercise } = invent(INVENTED.together);
  const rows = tableRows(report, exercise);
  expect(rows.filter(({ heard }) => heard.startsWith('wrong'))).toEqual([
    expect.objectContaining({ name: 'F3', heard: 'wrong: E struck', hand: 'left' }),
  ]);
  const written = rows.filter(({ heard }) => !heard.startsWith('extra'));
  expect(written.filter(({ hand }) => hand === 'right').map(({ name }) => name)).toEqual(
    exercise.steps.flatMap(({ notes }) =>
      notes
        .filter(({ hand }) => hand === 'right')
        .map(({ name }) => name.replace('#', '♯').replace(/b(?=\d)/, '♭')),
    ),
  );
});

it('remarks name the octave and the state of the sound, and call neither a mistake', () => {
  const { report } = invent(INVENTED.lateThumb);
  const shifted = {
    ...report,
    remarks: [{ kind: 'other-octave' as const, octaveShift: -1 }],
    audio: { ...report.audio, findings: [{ kind: 'clipping' as const, detail: 'It clips.' }] },
  };
  const handOnly = { kind: 'other-octave' as const, octaveShift: 1, hand: 'right' as const };
  expect(remarkLines({ ...report, remarks: [handOnly] }, [])).toEqual([
    'The right hand played an octave higher than written; that is no mistake.',
  ]);
  expect(remarkLines(shifted, ['Recorded with automatic gain.'])).toEqual([
    'Played an octave lower than written; that is no mistake.',
    'It clips.',
    'Recorded with automatic gain.',
  ]);
});
