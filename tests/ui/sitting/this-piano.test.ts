import { describe, expect, it } from 'vitest';
import type { PianoProfile } from '../../../src/engine/index.ts';
import { createSettings } from '../../../src/io/settings/index.ts';
import { readPiano } from '../../../src/io/check/index.ts';
import { ThisPiano } from '../../../src/ui/sitting/state/this-piano.ts';
import { storageIn } from '../../support/storage.ts';

const PIANO: PianoProfile = {
  version: 1,
  tuningCents: { value: -39, plusMinus: 1.2, count: 13 },
  keys: {
    60: { levelDb: { value: -22, plusMinus: 1, count: 3 }, cents: { value: 2, plusMinus: 1, count: 3 } },
  },
};

const store = () => {
  const kept = new Map<string, string>();
  return createSettings(() => storageIn(kept));
};

describe('this piano', () => {
  it('is remembered beyond the page, refined, and forgotten', () => {
    const settings = store();
    expect(new ThisPiano(settings).known).toBeNull();
    new ThisPiano(settings).learn(PIANO);
    expect(new ThisPiano(settings).known).toEqual(PIANO);
    const piano = new ThisPiano(settings);
    piano.learn({ ...PIANO, tuningCents: { value: -37, plusMinus: 1.2, count: 13 } });
    expect(piano.known?.tuningCents.value).toBeCloseTo(-38, 6);
    expect(piano.known?.tuningCents.count).toBe(26);
    piano.forget();
    expect(new ThisPiano(settings).known).toBeNull();
  });

  it('is not learnt from nothing', () => {
    const piano = new ThisPiano(store());
    piano.learn(null);
    piano.learnFrom({ kind: 'no-playing', reason: { notice: 'no-notes' } } as Parameters<
      ThisPiano['learnFrom']
    >[0]);
    expect(piano.known).toBeNull();
  });
});

describe('what was remembered', () => {
  it.each([
    ['nothing', null],
    ['another version', { ...PIANO, version: 2 }],
    ['no tuning', { version: 1, keys: {} }],
    ['a tuning that is no number', { ...PIANO, tuningCents: { value: null, plusMinus: 1, count: 3 } }],
    ['a certainty of nothing', { ...PIANO, tuningCents: { value: 1, plusMinus: 0, count: 3 } }],
  ])('of the shape of %s is no piano', (_, kept) => {
    expect(readPiano(kept)).toBeNull();
  });

  it('loses keys that cannot be', () => {
    const key = PIANO.keys[60]!;
    const kept = { ...PIANO, keys: { 60: key, 300: key, 61: { levelDb: 'loud' } } };
    expect(readPiano(kept)?.keys).toEqual({ 60: key });
  });
});
