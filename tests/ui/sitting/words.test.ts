import { describe, expect, it } from 'vitest';
import { buildExercise, keyFacts } from '../../../src/engine/index.ts';
import type { PianoProfile, RoomCheck } from '../../../src/engine/index.ts';
import { pianoWords, roomWords } from '../../../src/ui/sitting/room-words.ts';
import { heldPeak } from '../../../src/ui/record/meter.ts';
import { speller } from '../../../src/ui/sitting/spell.ts';
import { stateWords } from '../../../src/ui/sitting/words.ts';

describe('the state of listening', () => {
  const at = {
    phase: 'on',
    halted: false,
    face: 'waiting',
    attempts: 3,
    waits: false,
    passedOver: false,
  } as const;
  it.each([
    ['opening', { ...at, phase: 'opening' }, 'Opening the microphone'],
    ['at rest', at, 'Waiting for your first note'],
    ['playing', { ...at, face: 'listening' }, 'Listening'],
    ['stopped within the exercise', { ...at, face: 'listening', waits: true }, 'Go on when you are ready'],
    ['at rest after other playing', { ...at, passedOver: true }, 'That was not the exercise: not counted'],
    ['over', { ...at, face: 'working' }, 'Working it out'],
    ['told', { ...at, face: 'told' }, 'Attempt 3. Ready for the next'],
    ['without a microphone', { ...at, face: 'listening', halted: true }, 'Not listening'],
  ] as const)('%s', (_, sitting, words) => {
    expect(stateWords(sitting)).toBe(words);
  });
});

const piano = (cents: number): PianoProfile => ({
  version: 1,
  tuningCents: { value: cents, plusMinus: 1, count: 9 },
  keys: {},
});

describe('this piano', () => {
  it('is told by the pitch of its A (closed form: 440 · 2^(cents/1200))', () => {
    expect(pianoWords(piano(-39))).toBe('The piano stands at A = 430.2\u202fHz, −39\u202fcents from 440.');
    expect(pianoWords(piano(0.4))).toBe('The piano stands at A = 440.1\u202fHz.');
  });
});

describe('the room check', () => {
  const note = {
    timeSec: 4,
    midi: 40,
    cents: 0,
    levelDb: -30,
    confidence: 0.9,
    releaseSec: null,
    aboveNoiseDb: 38.2,
  };
  const good: RoomCheck = {
    silence: { noiseDb: -68, hum: null },
    notes: [note],
    findings: [],
    piano: piano(-12),
  };

  it('counts the seconds of silence in words', () => {
    expect(roomWords({ kind: 'silence', leftSec: 2 }).lines[0]).toMatch(/2 more seconds\.$/);
    expect(roomWords({ kind: 'silence', leftSec: 1 }).lines[0]).toMatch(/1 more second\.$/);
  });

  it('says which of how many notes is asked for', () => {
    expect(roomWords({ kind: 'note', asked: 'low' }).lines).toEqual(['Note 1 of 3']);
    expect(roomWords({ kind: 'note', asked: 'high' }).lines).toEqual(['Note 3 of 3']);
  });

  it('does not say how far the piano stands above a room that was not to be heard', () => {
    const check = {
      ...good,
      silence: { noiseDb: null, hum: null },
      notes: [{ ...note, aboveNoiseDb: null }],
    };
    const { title, lines } = roomWords({ kind: 'done', check });
    expect(title).toBe('This is a good place');
    expect(lines.join(' ')).not.toMatch(/dB/);
    // Nothing is in the way: that, too, is not known there.
    expect(lines.join(' ')).not.toMatch(/Nothing here is in the way/);
    expect(lines[0]).toMatch(/How loud the room is cannot be told/);
  });

  it('says that the place is good, by how much, and what piano it is', () => {
    const { title, lines } = roomWords({ kind: 'done', check: good });
    expect(title).toBe('This is a good place');
    expect(lines[0]).toContain('38\u202fdB above the room');
    expect(lines[1]).toContain('remembered as this piano');
  });

  it('says what can be better, with its figures', () => {
    const findings = [{ kind: 'noise', aboveDb: 12.3 }] as const;
    const { title, lines } = roomWords({ kind: 'done', check: { ...good, findings, piano: null } });
    expect(title).toBe('Something can be better here');
    expect(lines).toEqual([
      'The room is loud: the piano stands only 12\u202fdB above it; close windows and doors, or turn off what hums.',
    ]);
  });
});

describe('a key struck', () => {
  const nameOf = speller(
    buildExercise({ key: 'Ab minor', form: 'scale', hands: 'right', octaves: 1 }),
    keyFacts('Ab minor'),
  );
  it('is written as the exercise spells it, at any octave', () => {
    expect(nameOf(59)).toBe('C♭');
    expect(nameOf(71 + 24)).toBe('C♭');
  });
  it('that is not of the exercise takes the signs of its key', () => {
    const sharp = speller(
      buildExercise({ key: 'E major', form: 'arpeggio', hands: 'right', octaves: 1 }),
      keyFacts('E major'),
    );
    expect(sharp(61)).toBe('C♯');
    const flat = speller(
      buildExercise({ key: 'F major', form: 'arpeggio', hands: 'right', octaves: 1 }),
      keyFacts('F major'),
    );
    expect(flat(70)).toBe('B♭');
  });
});

describe('the held peak', () => {
  const level = (timeSec: number, peakDb: number, clipped = false) => ({ timeSec, peakDb, clipped });
  it('stays until it is passed, or two and a half seconds old', () => {
    expect(heldPeak(level(1, -10), level(2, -20)).peakDb).toBe(-10);
    expect(heldPeak(level(1, -10), level(2, -5)).peakDb).toBe(-5);
    expect(heldPeak(level(1, -10), level(3.6, -20)).peakDb).toBe(-20);
  });
  it('remembers that it clipped', () => {
    expect(heldPeak(level(1, -1, true), level(2, -20)).clipped).toBe(true);
    expect(heldPeak(level(1, -10), level(2, -20, true)).clipped).toBe(true);
    expect(heldPeak(level(1, -1, true), level(4, -20)).clipped).toBe(false);
  });
  it('begins anew with a sound that begins anew', () => {
    expect(heldPeak(level(50, -1, true), level(0.1, -30))).toEqual(level(0.1, -30));
  });
});
