import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readWav } from '../../src/library/index.ts';
import { encodeWav } from '../../src/io/exchange/index.ts';
import { surface } from './surface.ts';

const README = readFileSync(resolve(import.meta.dirname, '../../src/library/README.md'), 'utf8');

describe('what the package shows', () => {
  const shown = surface();
  const functions = shown.filter(({ isFunction }) => isFunction);

  it('is found, functions and types', () => {
    expect(functions.length).toBeGreaterThan(5);
    expect(shown.length).toBeGreaterThan(functions.length);
  });

  it('says of each name what it is', () => {
    expect(shown.filter(({ docs }) => docs === '').map(({ name }) => name)).toEqual([]);
  });

  it('has an example for each function', () => {
    expect(functions.filter(({ examples }) => examples.length === 0).map(({ name }) => name)).toEqual([]);
  });

  it('is in the table of its README: every function and value, and no other', () => {
    const rows = README.match(/^\| `.*$/gm) ?? [];
    const named = rows.flatMap((row) => [...row.split('|')[1]!.matchAll(/`(\w+)`/g)].map(([, name]) => name));
    const values = shown.filter(({ isFunction, name }) => isFunction || name === name.toUpperCase());
    expect(named.sort()).toEqual(values.map(({ name }) => name).sort());
  });
});

describe('readWav', () => {
  it('gives the samples that were written, to the last bit of 16', async () => {
    const samples = Float32Array.from({ length: 500 }, (_, i) => Math.sin(i / 7) / 2);
    const bytes = encodeWav({ channels: [samples], sampleRateHz: 44_100 });
    const { channels, sampleRateHz } = await readWav(new Uint8Array(bytes));
    expect(sampleRateHz).toBe(44_100);
    expect(channels).toHaveLength(1);
    expect(Math.max(...samples.map((sample, i) => Math.abs(sample - channels[0]![i]!)))).toBeLessThan(
      2 ** -15,
    );
  });

  it('refuses what is no WAV file', async () => {
    await expect(readWav(new TextEncoder().encode('ID3 and then some'))).rejects.toThrow(/no WAV file/);
  });
});
