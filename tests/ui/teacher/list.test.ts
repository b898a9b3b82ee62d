import { describe, expect, it } from 'vitest';
import { DEFAULT_CRITERIA, USUAL_GOALS } from '../../../src/engine/index.ts';
import type { AttemptSummary, ExerciseChoice } from '../../../src/engine/index.ts';
import type { GivenFile, Playing, Student } from '../../../src/io/teaching/index.ts';
import { kindOf } from '../../../src/ui/teacher/state/playings.ts';
import { beforeIt, changeWords, sinceWords } from '../../../src/ui/teacher/change.ts';
import { fileNameOf } from '../../../src/ui/kit/save.ts';
import { deedOf, type Pressed } from '../../../src/ui/teacher/shortcuts.ts';
import { proposedNames } from '../../../src/ui/teacher/state/students.ts';
import { suggestionsFor } from '../../../src/ui/teacher/suggest.ts';
import { isIn } from '../../../src/ui/teacher/which.ts';
import { stateWords, whereWords, whyUntold } from '../../../src/ui/teacher/words.ts';
import { NOW_MS, summary } from '../../engine/standing/history.ts';

const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 };
let count = 0;
const playing = (made: Partial<AttemptSummary> | null, more: Partial<Playing> = {}): Playing => ({
  id: `p${(count += 1)}`,
  fileId: 'f',
  studentId: 's',
  addedMs: NOW_MS,
  whenMs: NOW_MS + count,
  name: 'd.wav',
  startSec: 0,
  endSec: 6,
  recognition: { choice: SCALE, confidence: 0.99, octaveShift: 0, alternatives: [] },
  chosen: null,
  summary: made === null ? null : summary(SCALE, made),
  evennessPlusMinus: 0.4,
  verdict: 'Every note right.',
  reason: '',
  heardMs: null,
  answeredMs: null,
  remarks: 0,
  soundBytes: 0,
  deletedMs: null,
  ...more,
});
const STUDENT: Student = {
  id: 's',
  name: 'Mara',
  words: '',
  message: '',
  assignment: [],
  sent: [],
  deletedMs: null,
};

describe('a name that was proposed', () => {
  const named = (id: string, name: string): Student => ({ ...STUDENT, id, name, proposed: true });
  const file = (studentId: string, path: string) => ({ studentId, path }) as GivenFile;
  const students = [named('a', 'Mara'), named('b', 'Mara Urlaub'), named('c', 'Mara Lind')];

  it('is shown without a word that is nobody’s, unless a folder is called so', () => {
    const files = [
      ...['a.wav', 'b.wav', 'c.wav'].map((name) => file('a', `w/Mara ${name}`)),
      file('b', 'w/Mara Urlaub.wav'),
      file('c', 'w/Mara Lind/d.wav'),
    ];
    expect([...proposedNames(students, files).values()]).toEqual(['Mara', 'Mara', 'Mara Lind']);
  });
});

describe('what changed since the attempt before', () => {
  it.each([
    ['nothing within the ± of both', { evennessPercent: 6 }, { evennessPercent: 6.9 }, ''],
    [
      'more even beyond it',
      { evennessPercent: 9 },
      { evennessPercent: 6 },
      'more even (9.0 % before, 6.0 % now)',
    ],
    ['less even', { evennessPercent: 6 }, { evennessPercent: 9 }, 'less even (6.0 % before, 9.0 % now)'],
    ['fewer mistakes', { wrong: 2, missed: 1 }, { extra: 1 }, 'fewer notes went wrong (3 before, 1 now)'],
    ['more mistakes', {}, { wrong: 1 }, 'more notes went wrong (0 before, 1 now)'],
  ])('is told: %s', (_, before, now, words) => {
    expect(changeWords(playing(before), playing(now)).replaceAll('\u202f', ' ')).toBe(words);
  });

  it.each([
    ['by its day', -86_400_000, /^Since yesterday.*: about the same\.$/],
    ['not by its time on one day', -60_000, /^Since the attempt before: about the same\.$/],
    ['nor where no day is known', null, /^Since the attempt before: about the same\.$/],
  ])('the attempt before is told %s', (_, agoMs, words) => {
    const before = playing({}, { whenMs: agoMs === null ? null : NOW_MS + agoMs });
    expect(sinceWords(before, playing({}, { whenMs: NOW_MS }), NOW_MS)).toMatch(words);
  });

  it('looks at the same exercise only, by the same hand', () => {
    const one = playing({});
    const other = playing(null);
    const left = playing({}, { summary: summary({ ...SCALE, hands: 'left' }) });
    const now = playing({});
    expect(beforeIt(now, [one, other, left, now])).toBe(one);
    expect(beforeIt(one, [one, other, left, now])).toBeNull();
    expect(beforeIt(other, [one, other, left, now])).toBeNull();
  });
});

describe('a line of the list', () => {
  it('says how it went, where it comes from, and how far the teacher is with it', () => {
    expect(whereWords(playing({}, { startSec: 72, whenMs: null }), NOW_MS)).toBe('d.wav, from 1:12');
    expect(stateWords(playing({}))).toBe('to be heard');
    expect(stateWords(playing({}, { heardMs: 1, remarks: 2 }))).toBe('heard, 2 remarks');
    expect(stateWords(playing({}, { heardMs: 1, remarks: 2, answeredMs: 2 }))).toBe('answered');
  });

  it('is shown while something is to be done, and a student without any attempt stays to be answered', () => {
    const file = (state: GivenFile['state']) => ({ studentId: 's', state }) as GivenFile;
    const heard = playing({}, { heardMs: 1 });
    expect(isIn('to-hear', STUDENT, [heard], [file('sorted')])).toBe(false);
    expect(isIn('to-answer', STUDENT, [heard], [file('sorted')])).toBe(true);
    expect(isIn('to-answer', STUDENT, [{ ...heard, answeredMs: 2 }], [file('sorted')])).toBe(false);
    expect(isIn('to-hear', STUDENT, [], [file('waiting')])).toBe(true);
    expect(isIn('to-answer', STUDENT, [playing(null)], [file('sorted')])).toBe(true);
    expect(isIn('all', STUDENT, [], [])).toBe(true);
  });
});

describe('playing that is no attempt', () => {
  const told = (confidence: number, fit: number | null) =>
    kindOf(
      playing(null, {
        recognition: {
          choice: null,
          confidence,
          octaveShift: 0,
          alternatives: fit === null ? [] : [{ choice: SCALE, fit }],
        },
      }),
    );

  it('cannot be told where something is likely, and is other playing where nothing is', () => {
    expect([told(0.3, 0.7), told(0.29, 0.7), told(0.99, 0), told(0, null)]).toEqual([
      'cannot-tell',
      'other',
      'other',
      'other',
    ]);
    expect(kindOf(playing({}))).toBe('attempt');
  });
});

describe('why an attempt has no report', () => {
  const untold = (second: ExerciseChoice) =>
    whyUntold(
      playing(null, {
        reason: 'It fits nothing.',
        recognition: {
          choice: null,
          confidence: 0.5,
          octaveShift: 0,
          alternatives: [SCALE, second].map((choice) => ({ choice, fit: 0.9 })),
        },
      }),
    );

  it('is the piano where it stands between two keys, else as it was told', () => {
    expect(untold({ ...SCALE, key: 'Eb major' })).toMatch(/leaves open which/);
    expect(untold({ ...SCALE, key: 'A major' })).toBe('It fits nothing.');
    expect(untold({ ...SCALE, key: 'Eb major', octaves: 1 })).toBe('It fits nothing.');
  });
});

describe('what is suggested next', () => {
  const ready = [0, 1, 2].map((day) => playing({}, { whenMs: day * 86_400_000 }));

  it('is the other hand where one is ready', () => {
    const [first] = suggestionsFor(ready, [], DEFAULT_CRITERIA, USUAL_GOALS);
    expect(first).toMatchObject({ exercise: { ...SCALE, hands: 'left' }, targetBpm: 80 });
  });

  it('goes by the levels as the teacher changed them', () => {
    const [level] = USUAL_GOALS.syllabus.levels;
    const faster = level!.asks.map((ask) => ({ ...ask, leastBpm: 90, together: false }));
    const syllabus = { ...USUAL_GOALS.syllabus, levels: [{ ...level!, keys: [SCALE.key], asks: faster }] };
    const [first] = suggestionsFor(ready, [], DEFAULT_CRITERIA, { ...USUAL_GOALS, syllabus });
    expect(first).toMatchObject({ exercise: SCALE, why: /90/ as unknown });
  });

  it('is what is not ready, with the reason, and nothing that is assigned already', () => {
    const weak = [playing({ evennessPercent: 14 })];
    const [only] = suggestionsFor(weak, [], DEFAULT_CRITERIA, USUAL_GOALS);
    expect(only).toMatchObject({ exercise: SCALE, targetBpm: 81, why: /14\.0/ as unknown });
    const assigned = { exercise: SCALE, targetBpm: null, inARow: null, evennessPercent: null, note: '' };
    expect(suggestionsFor(weak, [assigned], DEFAULT_CRITERIA, USUAL_GOALS)).toEqual([]);
  });
});

describe('keys', () => {
  const press = (key: string, more: Partial<Pressed> = {}, inside = ''): Pressed => ({
    key,
    shiftKey: false,
    ctrlKey: false,
    altKey: false,
    metaKey: false,
    defaultPrevented: false,
    target: {
      closest: (list: string) => (inside !== '' && list.includes(inside) ? {} : null),
    } as unknown as EventTarget,
    ...more,
  });

  it.each([
    ['the arrow to the right goes to the next trouble', press('ArrowRight'), 'next-spot'],
    ['with Shift to the next attempt', press('ArrowRight', { shiftKey: true }), 'next-attempt'],
    ['space plays', press(' '), 'play'],
    ['… unless it presses a button', press(' ', {}, 'button'), null],
    ['H is half speed, large or small', press('H'), 'half'],
    ['a letter in a field is a letter', press('h', {}, 'textarea'), null],
    ['arrows on the string of pearls move there', press('ArrowRight', {}, '[data-spot]'), null],
    ['what the browser or a reader of screens uses stays theirs', press('r', { ctrlKey: true }), null],
    ['what was done already is not done again', press('l', { defaultPrevented: true }), null],
    ['N goes to the next attempt', press('n'), 'next-attempt'],
    ['S speaks', press('s'), 'speak'],
    ['1 and 2 say which hand it was', press('1'), 'left-hand'],
    ['…', press('2'), 'right-hand'],
    ['… and 3 both', press('3'), 'both-hands'],
    ['E says another exercise', press('e'), 'exercise'],
    ['? shows the keys', press('?', { shiftKey: true }), 'keys'],
    ['Esc leaves', press('Escape'), 'leave'],
    ['other keys do nothing', press('q'), null],
  ])('%s', (_, pressed, deed) => {
    expect(deedOf(pressed)).toBe(deed);
  });
});

describe('the name of a file', () => {
  it.each([
    ['Mara', 'Mara-review-2026-11-25.zip'],
    ['', 'review-2026-11-25.zip'],
    ['../Jo & Co.', 'Jo-Co-review-2026-11-25.zip'],
    ['Zoë Ö.', 'Zoë-Ö-review-2026-11-25.zip'],
  ])('of "%s" is %s', (student, name) => {
    expect(fileNameOf([student, 'review'], NOW_MS, 'zip')).toBe(name);
  });
});
