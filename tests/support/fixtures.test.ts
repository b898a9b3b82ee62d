import { readdirSync, readFileSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { decodeFile } from '../../src/io/decode/index.ts';
import { FIXTURES } from './fixtures.ts';
import { render } from './render.ts';
import type { Truth } from './render.ts';

const FOLDER = resolve(import.meta.dirname, '../../audio-fixtures');
const MOST_BYTES = 6_000_000;

describe('the committed recordings', () => {
  it('are exactly those of the list', () => {
    expect(readdirSync(FOLDER).sort()).toEqual(FIXTURES.map(({ name }) => name).sort());
  });

  it('stay small together', () => {
    const bytes = FIXTURES.map(({ name }) => statSync(resolve(FOLDER, name, 'attempt.wav')).size);
    expect(bytes.reduce((sum, size) => sum + size, 0)).toBeLessThan(MOST_BYTES);
  });

  it.each(FIXTURES)(
    '$name says where its samples come from, under which licence, and that they are modified',
    ({ name }) => {
      const source = readFileSync(resolve(FOLDER, name, 'SOURCE.md'), 'utf8');
      expect(source).toMatch(/Creative\s+Commons\s+Attribution 3\.0/);
      expect(source).toMatch(/Modified/);
      expect(source).toMatch(/seed \d+/);
    },
  );

  it.each(FIXTURES.slice(0, 2))(
    '$name is what the renderer makes today (else: npm run fixtures)',
    async ({ name, spec }) => {
      const { channels, truth } = await render(spec);
      const bytes = Uint8Array.from(readFileSync(resolve(FOLDER, name, 'attempt.wav')));
      const committed = await decodeFile(bytes.buffer, 'attempt.wav');
      const apart = channels[0]!.reduce(
        (most, value, index) => Math.max(most, Math.abs(value - committed.channels[0]![index]!)),
        0,
      );
      expect(committed.channels[0]!.length).toBe(channels[0]!.length);
      // One step of 16 bits is 1/32768; another processor may round the last bit of a sine otherwise.
      expect(apart).toBeLessThan(3 / 32768);
      const told = JSON.parse(readFileSync(resolve(FOLDER, name, 'truth.json'), 'utf8')) as Truth;
      expect(told.notes.length).toBe(truth.notes.length);
      told.notes.forEach(({ timeSec, midi, verdict }, index) => {
        expect(timeSec).toBeCloseTo(truth.notes[index]!.timeSec, 5);
        expect(`${midi} ${verdict}`).toBe(`${truth.notes[index]!.midi} ${truth.notes[index]!.verdict}`);
      });
    },
  );
});
