import { describe, expect, it } from 'vitest';
import type {
  ChordPlace,
  CrossingFacts,
  NamedStretch,
  StepPlace,
  Task,
} from '../../../../src/engine/report/words/said/index.ts';
import * as english from '../../../../src/engine/report/words/telling/english/places.ts';
import * as german from '../../../../src/engine/report/words/telling/german/places.ts';

/* How numbers, places, chords and stretches are called: read by eye by somebody who speaks the language. */

const en = english.notesIn('letters');
const de = german.notesIn('german');
const chord = (label: string | null, which: ChordPlace['which'], number = 1): ChordPlace => ({
  label,
  number,
  which,
});

describe('numbers', () => {
  it('are words up to twelve, figures from there', () => {
    const upTo = Array.from({ length: 14 }, (_, number) => number);
    expect(upTo.map(english.count).join(' ')).toBe(
      'no one two three four five six seven eight nine ten eleven twelve 13',
    );
    expect(upTo.map(german.count).join(' ')).toBe(
      'kein ein zwei drei vier fünf sechs sieben acht neun zehn elf zwölf 13',
    );
    expect([1, 2, 3, 12, 13].map(german.times).join(' ')).toBe('einmal zweimal dreimal zwölfmal 13-mal');
    expect([1, 2, 13].map(german.some).join(' ')).toBe('einer zwei 13');
    expect(german.figure(-12.34, 1)).toBe('-12,3');
  });

  it.each([
    [[], '', ''],
    [['A'], 'A', 'A'],
    [['A', 'B'], 'A and B', 'A und B'],
    [['A', 'B', 'C'], 'A, B and C', 'A, B und C'],
  ])('%j is listed with an “and” before the last', (words, inEnglish, inGerman) => {
    expect(english.list(words)).toBe(inEnglish);
    expect(german.list(words)).toBe(inGerman);
  });
});

describe('a chord', () => {
  it.each<[ChordPlace, string, string, string]>([
    [chord('V7', 'only'), 'V7', 'der V7', 'im V7'],
    [chord('I', 'only'), 'I', 'die I. Stufe', 'in der I. Stufe'],
    [chord('iv', 'only'), 'iv', 'die IV. Stufe', 'in der IV. Stufe'],
    [chord('I', 'first'), 'first I', 'die erste I. Stufe', 'in der ersten I. Stufe'],
    [chord('I', 'middle'), 'middle I', 'die mittlere I. Stufe', 'in der mittleren I. Stufe'],
    [chord('I', 'last'), 'last I', 'die letzte I. Stufe', 'in der letzten I. Stufe'],
    [
      chord('root position', 'up'),
      'root position going up',
      'die Grundstellung aufwärts',
      'in der Grundstellung aufwärts',
    ],
    [
      chord('root position', 'top'),
      'top root position',
      'die obere Grundstellung',
      'in der oberen Grundstellung',
    ],
    [
      chord('first inversion', 'down'),
      'first inversion coming down',
      'die erste Umkehrung abwärts',
      'in der ersten Umkehrung abwärts',
    ],
    [
      chord('second inversion', 'only'),
      'second inversion',
      'die zweite Umkehrung',
      'in der zweiten Umkehrung',
    ],
    [chord(null, 'only', 1), 'first chord', 'der erste Akkord', 'im ersten Akkord'],
    [
      chord(null, 'up', 3),
      'third chord going up',
      'der dritte Akkord aufwärts',
      'im dritten Akkord aufwärts',
    ],
    [chord(null, 'only', 7), 'seventh chord', 'der siebte Akkord', 'im siebten Akkord'],
  ])('%j is “%s”, “%s”, “%s”', (place, inEnglish, nominative, dative) => {
    expect(english.chord(place)).toBe(inEnglish);
    expect(german.theChord(place)).toBe(nominative);
    expect(german.chordAfter('in', place)).toBe(dative);
  });

  it('is drawn together with what stands before it, where the language does so', () => {
    const after = (place: ChordPlace): string =>
      (['in', 'bei', 'nach', 'zu', 'ab', 'von'] as const)
        .map((preposition) => german.chordAfter(preposition, place).replace(/ \S+$/, ''))
        .join(', ');
    expect(after(chord('V7', 'only'))).toBe('im, beim, nach dem, zum, ab dem, vom');
    expect(after(chord('root position', 'only'))).toBe('in der, bei der, nach der, zur, ab der, von der');
  });
});

describe('a place', () => {
  it.each<[StepPlace, string, string]>([
    [{ kind: 'up' }, 'going up', 'aufwärts'],
    [{ kind: 'down', octave: 'lower' }, 'coming down in the lower octave', 'abwärts in der unteren Oktave'],
    [{ kind: 'up', octave: 'middle' }, 'going up in the middle octave', 'aufwärts in der mittleren Oktave'],
    [{ kind: 'start' }, 'at the start', 'am Anfang'],
    [{ kind: 'top' }, 'at the top', 'oben'],
    [{ kind: 'end' }, 'at the end', 'am Ende'],
    [{ kind: 'bar', bar: 3 }, 'in bar 3', 'in Takt 3'],
    [{ kind: 'bar', bar: 0 }, 'in the upbeat', 'im Auftakt'],
    [{ kind: 'anywhere' }, '', ''],
    [{ kind: 'anywhere', octave: 'upper' }, 'in the upper octave', 'in der oberen Oktave'],
    [{ kind: 'chord', chord: chord('V7', 'only') }, 'in the V7', 'im V7'],
  ])('%j is “%s”, “%s”', (place, inEnglish, inGerman) => {
    expect(english.where(place)).toBe(inEnglish);
    expect(german.where(place)).toBe(inGerman);
  });

  it('of a note stands after its name, of a chord in its place', () => {
    const note = { note: 'Eb', place: { kind: 'up' } } as const;
    expect([en.spot(note), de.spot(note), de.spotAfter('nach', note)]).toEqual([
      'E♭ going up',
      'Es aufwärts',
      'nach Es aufwärts',
    ]);
    const inChord = { note: 'Eb', place: { kind: 'chord', chord: chord('V7', 'only') } } as const;
    expect([en.spot(inChord), de.spot(inChord), de.spotAfter('nach', inChord)]).toEqual([
      'the V7',
      'der V7',
      'nach dem V7',
    ]);
  });

  it.each([
    [{ kind: 'unsaid' }, '', ''],
    [{ kind: 'once', place: { kind: 'up' } }, 'going up', 'aufwärts'],
    [{ kind: 'both' }, 'both times', 'beide Male'],
    [{ kind: 'each' }, 'each time', 'jedes Mal'],
    [{ kind: 'some', count: 2 }, 'twice', 'zweimal'],
    [{ kind: 'some', count: 3 }, 'three times', 'dreimal'],
  ] as const)('so often: %j is “%s”, “%s”', (how, inEnglish, inGerman) => {
    expect(english.often(how)).toBe(inEnglish);
    expect(german.often(how)).toBe(inGerman);
  });
});

describe('a stretch', () => {
  const chords = (from: ChordPlace, to: ChordPlace): NamedStretch => ({ kind: 'chords', from, to });
  const root = (which: ChordPlace['which']) => chord('root position', which);
  const first = (which: ChordPlace['which']) => chord('first inversion', which);

  it.each<[NamedStretch, string, string]>([
    [{ kind: 'notes', names: ['Ab', 'C', 'Eb'] }, 'A♭–C–E♭', 'As–C–Es'],
    [{ kind: 'numerals', names: ['I', 'V7'] }, 'I–V7', 'I–V7'],
    [{ kind: 'whole', chords: false }, 'the whole', 'das Ganze'],
    [
      chords(root('up'), root('top')),
      'from the root position up to the top root position',
      'von der Grundstellung hinauf zur oberen Grundstellung',
    ],
    [
      chords(first('up'), first('down')),
      'from the first inversion over the top to the first inversion',
      'von der ersten Umkehrung über die obere Grundstellung zur ersten Umkehrung',
    ],
    [
      chords(root('top'), first('down')),
      'from the top root position down to the first inversion',
      'von der oberen Grundstellung hinunter zur ersten Umkehrung',
    ],
    [
      chords(first('down'), root('down')),
      'from the first inversion down to the root position',
      'von der ersten Umkehrung hinunter zur Grundstellung',
    ],
    [
      { kind: 'ends', from: 'Ab', to: 'C', way: 'up', notes: 9 },
      'from A♭ up to C (9 notes)',
      'von As aufwärts bis C (9 Töne)',
    ],
    [{ kind: 'ends', from: 'Ab', to: 'C', way: 'down' }, 'from A♭ down to C', 'von As abwärts bis C'],
    [
      { kind: 'ends', from: 'C', to: 'C', way: 'up-and-down' },
      'from C up and down to C',
      'von C hinauf und hinunter bis C',
    ],
    [
      { kind: 'bars', from: 'C', fromBar: 0, to: 'D', toBar: 2 },
      'from C in the upbeat to D in bar 2',
      'von C im Auftakt bis D in Takt 2',
    ],
    [
      { kind: 'bars', from: 'C', fromBar: 2, to: 'D', toBar: 2 },
      'from C to D in bar 2',
      'von C bis D in Takt 2',
    ],
  ])('%j is “%s”, “%s”', (stretch, inEnglish, inGerman) => {
    expect(en.stretch(stretch)).toBe(inEnglish);
    expect(de.stretch(stretch)).toBe(inGerman);
  });

  const notes: NamedStretch = { kind: 'notes', names: ['E', 'F#'] };
  const two = chords(root('up'), first('up'));
  it.each<[Omit<Task, 'hands'>, string, string]>([
    [
      { stretch: notes, tempoBpm: 60, notesABeat: 2 },
      '♩ = 60, two notes a beat',
      '♩ = 60, zwei Töne auf jeden Schlag',
    ],
    [
      { stretch: notes, tempoBpm: 40, notesABeat: 1 },
      '♩ = 40, one note a beat',
      '♩ = 40, ein Ton auf jeden Schlag',
    ],
    [
      { stretch: notes, tempoBpm: 39, notesABeat: 1 },
      '♩ = 78, one note every two beats',
      '♩ = 78, ein Ton auf zwei Schläge',
    ],
    [
      { stretch: notes, tempoBpm: 39, notesABeat: 2 },
      '♩ = 78, one note a beat',
      '♩ = 78, ein Ton auf jeden Schlag',
    ],
    [
      { stretch: two, tempoBpm: 60, notesABeat: 1 },
      '♩ = 60, one chord a beat',
      '♩ = 60, ein Akkord auf jeden Schlag',
    ],
    [
      { stretch: two, tempoBpm: 30, notesABeat: 1 },
      '♩ = 60, one chord every two beats',
      '♩ = 60, ein Akkord auf zwei Schläge',
    ],
    [{ stretch: notes, tempoBpm: 33, notesABeat: null }, '♩ = 33', '♩ = 33'],
  ])('%j goes at “%s”, “%s”', (task, inEnglish, inGerman) => {
    expect(english.tempo(task)).toBe(inEnglish);
    expect(german.tempo(task)).toBe(inGerman);
  });

  it.each<[Task, string, string]>([
    [
      { hands: null, stretch: notes, tempoBpm: 60, notesABeat: null },
      'only E–F♯, ♩ = 60',
      'nur E–Fis, ♩ = 60',
    ],
    [
      { hands: 'left', stretch: notes, tempoBpm: 60, notesABeat: null },
      'left hand alone, only E–F♯, ♩ = 60',
      'linke Hand allein, nur E–Fis, ♩ = 60',
    ],
    [
      { hands: 'right', stretch: { kind: 'whole', chords: false }, tempoBpm: 60, notesABeat: null },
      'right hand alone, the whole, ♩ = 60',
      'rechte Hand allein, das Ganze, ♩ = 60',
    ],
    [
      { hands: 'together', stretch: { kind: 'whole', chords: false }, tempoBpm: 60, notesABeat: null },
      'both hands, the whole, ♩ = 60',
      'beide Hände, das Ganze, ♩ = 60',
    ],
  ])('%j is played “%s”, “%s”', (task, inEnglish, inGerman) => {
    expect(en.only(task)).toBe(inEnglish);
    expect(de.only(task)).toBe(inGerman);
  });
});

describe('a fault', () => {
  it.each([
    ['E', null, 'E missing', 'E fehlt'],
    ['E', 'F', 'F instead of E', 'F statt E'],
    ['E', 'octave-high', 'E an octave too high', 'E eine Oktave zu hoch'],
    ['E', 'octave-low', 'E an octave too low', 'E eine Oktave zu tief'],
    ['C#', 'C', 'C natural instead of C♯', 'C statt Cis'],
    ['C', 'C#', 'C♯ instead of C', 'Cis statt C'],
    ['C#', 'D', 'D instead of C♯', 'D statt Cis'],
  ] as const)('of %s, struck %s, is “%s”, “%s”', (wanted, struck, inEnglish, inGerman) => {
    expect(en.fault({ wanted, struck })).toBe(inEnglish);
    expect(de.fault({ wanted, struck })).toBe(inGerman);
  });

  it('has its place, and with both hands its hand', () => {
    const one = { step: 3, wanted: 'E', struck: 'F', place: { kind: 'up' }, hand: 'left' } as const;
    expect(en.placed(one)).toBe('F instead of E going up (left hand)');
    expect(de.placed(one)).toBe('F statt E aufwärts (linke Hand)');
    expect(en.placed({ ...one, hand: null })).toBe('F instead of E going up');
    expect(de.placed({ ...one, hand: null })).toBe('F statt E aufwärts');
  });

  it('by letters in German needs the word for natural', () => {
    expect(german.notesIn('letters').beside('C', 'C#')).toBe('C ohne Vorzeichen');
  });

  it('of a crossing has its direction, its note, its octave and its hand', () => {
    const one: CrossingFacts = { kind: 'thumb-under', direction: 'up', to: 'A', hand: null };
    expect(en.crossing(one)).toBe('going up to A');
    expect(de.crossing(one)).toBe('der Untersatz aufwärts zu A');
    const other: CrossingFacts = {
      kind: 'over-thumb',
      direction: 'down',
      to: 'Bb',
      octave: 'upper',
      hand: 'right',
    };
    expect(en.crossing(other)).toBe('coming down to B♭ in the upper octave (right hand)');
    expect(de.crossing(other)).toBe('der Übersatz abwärts zu B in der oberen Oktave (rechte Hand)');
  });
});
