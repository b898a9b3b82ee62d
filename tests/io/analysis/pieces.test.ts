import { resolve } from 'node:path';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/engine/index.ts';
import { analyseInPieces } from '../../../src/io/analysis/pieces.ts';
import { decodeFile } from '../../../src/io/decode/index.ts';

const FIXTURE = resolve(import.meta.dirname, '../../../audio-fixtures/clean-scale/attempt.wav');

describe('analysis piece by piece', () => {
  it('comes to what the whole recording comes to, and tells a progress that only grows, to 1', async () => {
    const audio = await decodeFile(Uint8Array.from(readFileSync(FIXTURE)).buffer, 'attempt.wav');
    const shares: number[] = [];
    const inPieces = await analyseInPieces(audio, null, {}, (share) => shares.push(share));
    expect(inPieces).toEqual(assess(audio, null));
    expect(shares.length).toBeGreaterThan(2);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });
});
