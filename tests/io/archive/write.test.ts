import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { openArchive, writeArchive } from '../../../src/io/archive/index.ts';
import { crc32, crc32InTurns } from '../../../src/io/archive/crc.ts';

const text = new TextEncoder().encode(Array.from({ length: 250_000 }, (_, i) => (i * i) % 99_991).join(' '));
const sound = Uint8Array.from({ length: 3_000_000 }, (_, i) => (i * i) >> 7);
const FILES = [
  { name: 'reports/1.json', bytes: text, packing: 'deflate' },
  { name: 'sound/1.wav', bytes: sound, packing: 'store' },
  { name: 'empty.txt', bytes: new Uint8Array(0), packing: 'deflate' },
] as const;

describe('an archive that is written', () => {
  it('is read by us and by another reader, byte for byte and in its order', async () => {
    const zip = await writeArchive(FILES, 'application/zip');
    expect(zip.type).toBe('application/zip');
    expect(zip.size).toBeLessThan(sound.length + 0.9 * text.length);
    const byAnother = unzipSync(new Uint8Array(await zip.arrayBuffer()));
    const byUs = await openArchive(zip);
    expect(Object.keys(byAnother)).toEqual(FILES.map(({ name }) => name));
    expect(byUs.map(({ name }) => name)).toEqual(FILES.map(({ name }) => name));
    for (const [at, { name, bytes }] of FILES.entries()) {
      expect(Buffer.compare(byAnother[name]!, bytes)).toBe(0);
      expect(Buffer.compare(await byUs[at]!.read(), bytes)).toBe(0);
    }
  });

  it('lets others have their turn while it is written and while it is read', async () => {
    let turns = 0;
    const clock = setInterval(() => (turns += 1), 1);
    const many = Array.from({ length: 12 }, (_, at) => ({ ...FILES[0], name: `${at}.json` }));
    const zip = await writeArchive(many, 'application/zip');
    const whileWritten = turns;
    for (const { read } of await openArchive(zip)) await read();
    clearInterval(clock);
    expect(whileWritten).toBeGreaterThan(2);
    expect(turns - whileWritten).toBeGreaterThan(2);
  });
});

it('a checksum taken in pieces is that of the whole', async () => {
  expect(await crc32InTurns(sound, () => undefined)).toBe(crc32(sound));
});
