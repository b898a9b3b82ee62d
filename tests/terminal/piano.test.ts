import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import type { PianoProfile } from '../../src/engine/index.ts';
import { openPiano } from '../../src/terminal/piano.ts';

const folder = mkdtempSync(join(tmpdir(), 'piano-'));
afterAll(() => rmSync(folder, { recursive: true }));

const PIANO: PianoProfile = {
  version: 1,
  tuningCents: { value: 28, plusMinus: 1, count: 20 },
  settledCents: -72,
  keys: { 60: { levelDb: { value: -30, plusMinus: 1, count: 4 } } },
  alone: { '48>60': [{ seen: 'A'.repeat(256) }] },
};

it('what is known of a piano is kept in a file that need not be there yet', async () => {
  const file = join(folder, 'piano.json');
  const first = await openPiano(file);
  expect(first.known).toBeNull();
  await first.write(PIANO, []);
  expect(await openPiano(file)).toMatchObject({ known: PIANO, handsPlayed: [] });
  expect(readFileSync(file, 'utf8').endsWith('}\n')).toBe(true);
});

it('looks that cannot be read are left out, and a file that holds no piano is refused', async () => {
  const damaged = join(folder, 'damaged.json');
  writeFileSync(damaged, JSON.stringify({ ...PIANO, alone: { '48>60': [{ seen: 'A' }], x: 1 } }));
  expect((await openPiano(damaged)).known?.alone).toBeUndefined();
  const other = join(folder, 'other.json');
  for (const text of ['{}', 'no JSON']) {
    writeFileSync(other, text);
    await expect(openPiano(other)).rejects.toThrow(/holds nothing that is known of a piano/);
  }
});

it('without a file nothing is known, and nothing kept', async () => {
  const none = await openPiano(null);
  expect(none.known).toBeNull();
  await none.write(PIANO, []);
});

const LEFT = { form: 'scale', hand: 'left', midi: 55 } as const;

it('where each hand played is kept beside it, the newest forty; what is no hand is left out', async () => {
  const file = join(folder, 'hands.json');
  const hands = Array.from({ length: 50 }, (_, at) => ({ ...LEFT, midi: 30 + at }));
  await (await openPiano(file)).write(PIANO, hands);
  expect((await openPiano(file)).handsPlayed).toEqual(hands.slice(-40));
  const odd = [LEFT, { ...LEFT, hand: 'foot' }, { ...LEFT, midi: 'C' }, null];
  writeFileSync(file, JSON.stringify({ ...PIANO, handsPlayed: odd }));
  expect((await openPiano(file)).handsPlayed).toEqual([LEFT]);
  writeFileSync(file, JSON.stringify({ ...PIANO, handsPlayed: 'all' }));
  expect(await openPiano(file)).toMatchObject({ known: PIANO, handsPlayed: [] });
});
