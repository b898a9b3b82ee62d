import { deflateRawSync } from 'node:zlib';
import { zipSync } from 'fflate';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crc32 } from '../../../src/io/archive/crc.ts';
import { ArchiveError, isArchive, openArchive } from '../../../src/io/archive/index.ts';
import { layZip, type Ending, type Laid } from './zip.ts';

const text = (letters: string): Uint8Array => new TextEncoder().encode(letters);
const blobOf = (bytes: Uint8Array<ArrayBuffer>): Blob => new Blob([bytes]);
const NOTE: Laid = { name: 'one.txt', bytes: text('one, and one again, and one again') };

async function readAll(file: Blob): Promise<Record<string, string>> {
  const read: Record<string, string> = {};
  for (const member of await openArchive(file, {
    mostMembers: 50,
    mostUnpackedBytes: 2 ** 24,
    mostMemberBytes: 2 ** 22,
  })) {
    read[member.name] = new TextDecoder().decode(await member.read());
  }
  return read;
}

describe('a zip is opened', () => {
  it('that another writer packed, folders left out', async () => {
    const file = zipSync({
      'a/one.txt': text('one'),
      'two.txt': [text('two'), { level: 0 }],
      empty: text(''),
      'a/': text(''),
    });
    expect(await readAll(blobOf(file))).toEqual({ 'a/one.txt': 'one', 'two.txt': 'two', empty: '' });
    expect(await isArchive(blobOf(file))).toBe(true);
  });

  it('with a comment at its end, and names of other tongues', async () => {
    const file = layZip([{ ...NOTE, name: 'Übung für Zoë.txt' }], { comment: text('a comment') });
    expect(Object.keys(await readAll(blobOf(file)))).toEqual(['Übung für Zoë.txt']);
  });

  it('with names that are no UTF-8, letter by byte', async () => {
    const file = layZip([{ ...NOTE, name: Uint8Array.from([0x5a, 0x6f, 0xeb]) }]);
    expect(Object.keys(await readAll(blobOf(file)))).toEqual(['Zoë']);
  });

  it('and any bytes come out as they went in', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 5000 }), fc.constantFrom(0, 8), async (bytes, method) => {
        const [member] = await openArchive(blobOf(layZip([{ name: 'x', bytes, method }])));
        expect(await member!.read()).toEqual(Uint8Array.from(bytes));
      }),
    );
  });

  it('by a checksum that gives the printed check value', () => {
    // CRC-32/ISO-HDLC, check value in the catalogue of parametrised CRC algorithms (Cook); memory.
    expect(crc32(text('123456789'))).toBe(0xcbf43926);
  });
});

describe('a zip is refused', () => {
  const refused = async (bytes: Uint8Array<ArrayBuffer>, message: RegExp): Promise<void> => {
    const reading = readAll(blobOf(bytes));
    await expect(reading).rejects.toThrow(ArchiveError);
    await expect(reading).rejects.toThrow(message);
  };

  it.each([
    ['that climbs', '../one.txt'],
    ['that climbs further down', 'a/../../one.txt'],
    ['of the root', '/one.txt'],
    ['of a drive', 'C:one.txt'],
    ['of another system', 'a\\..\\one.txt'],
    ['that ends early', 'one.txt\0.exe'],
    ['that is written backwards', 'one\u202etxt.exe'],
    ['with an empty folder', 'a//one.txt'],
    ['that stays where it is', './one.txt'],
  ])('for a name %s', (_, name) => refused(layZip([{ ...NOTE, name }]), /lead somewhere else/));

  it.each([
    ['none', ''],
    ['one without end', 'x'.repeat(401)],
    ['one that says it is UTF-8 and is not', Uint8Array.from([0xff, 0xfe])],
  ])('for %s as a name', (_, name) => refused(layZip([{ ...NOTE, name, flags: 1 << 11 }]), /usable name/));

  it.each([
    ['the same', 'one.txt', 'one.txt'],
    ['large and small letters', 'one.txt', 'ONE.txt'],
    ['one letter or two', 'Zoë.txt', 'Zoe\u0308.txt'],
    ['wide letters', 'one.txt', 'ｏｎｅ.txt'],
  ])('for two files of one name: %s', (_, a, b) =>
    refused(
      layZip([
        { ...NOTE, name: a },
        { ...NOTE, name: b },
      ]),
      /two files named/,
    ),
  );

  const saying: readonly (readonly [string, readonly Laid[], Ending, RegExp])[] = [
    ['a password', [{ ...NOTE, flags: 1 }], {}, /password/],
    ['another packing', [{ ...NOTE, method: 14, packed: text('x') }], {}, /ordinary zip/],
    ['a size that only zip64 can say, and does not', [{ ...NOTE, sizeBytes: 0xffffffff }], {}, /damaged/],
    ['a directory of zip64', [NOTE], { directoryAt: 0xffffffff }, /damaged/],
    ['several parts', [NOTE], { disk: 1 }, /several/],
    ['more files than it holds', [NOTE], { members: 2 }, /damaged/],
    ['fewer files than it holds', [NOTE, { ...NOTE, name: 'two' }], { members: 1 }, /damaged/],
    ['a directory elsewhere', [NOTE], { directoryAt: 3 }, /damaged/],
    ['a wrong checksum', [{ ...NOTE, crc: 1 }], {}, /one\.txt is damaged/],
    ['a smaller size', [{ ...NOTE, sizeBytes: 5 }], {}, /one\.txt is damaged/],
    ['a larger size', [{ ...NOTE, sizeBytes: 500 }], {}, /one\.txt is damaged/],
    [
      'other bytes than deflate',
      [{ ...NOTE, packed: text('no stream of deflate') }],
      {},
      /one\.txt is damaged/,
    ],
    ['a file that goes beyond the end', [{ ...NOTE, packedBytes: 900 }], {}, /damaged/],
    ['a size that cannot be', [{ ...NOTE, sizeBytes: 2 ** 21 }], {}, /far more/],
    ['one that is too large', [{ ...NOTE, sizeBytes: 2 ** 23 }], {}, /larger than 4 MB/],
    ['a header that is none', [{ ...NOTE, headerAt: 7 }], {}, /damaged/],
    [
      'two files in one place',
      [NOTE, { ...NOTE, name: 'two', headerAt: 0, unlaid: true }],
      {},
      /over each other/,
    ],
    [
      'a file inside another',
      [
        { name: 'outer', bytes: layZip([NOTE]), method: 0 },
        { ...NOTE, headerAt: 35, unlaid: true },
      ],
      {},
      /over each other/,
    ],
    [
      'too many files',
      Array.from({ length: 51 }, (_, at) => ({ ...NOTE, name: `${at}` })),
      {},
      /holds 51 files/,
    ],
  ];
  it.each(saying)('that says %s', (_, files, ending, message) => refused(layZip(files, ending), message));

  it.each([
    ['nothing', new Uint8Array(0)],
    ['other bytes', new Uint8Array(5000).fill(7)],
    ['a zip without its end', layZip([NOTE]).slice(0, -1)],
  ])('that is %s', (_, bytes) => refused(bytes, /no zip file/));

  it('that would unpack to more than the limit in all', async () => {
    const files = [NOTE, { ...NOTE, name: 'two.txt' }];
    await expect(openArchive(blobOf(layZip(files)), { mostUnpackedBytes: 40 })).rejects.toThrow(
      /unpack to more than/,
    );
  });

  it('that is larger than the limit, unread', async () => {
    await expect(openArchive(blobOf(layZip([NOTE])), { mostFileBytes: 20 })).rejects.toThrow(/larger than/);
  });

  it('that holds a gigabyte of zeros, whatever it says of them, in little memory', async () => {
    // A whole stream of 64 MB; what comes after the size that is said is never kept.
    const zeros = new Uint8Array(2 ** 26);
    const packed = new Uint8Array(deflateRawSync(zeros, { level: 9 }));
    const said = (sizeBytes: number): Laid => ({
      name: 'zeros',
      bytes: zeros.subarray(0, 1),
      packed,
      sizeBytes,
      crc: 0,
    });
    const before = process.memoryUsage().arrayBuffers;
    await refused(layZip([said(2 ** 30)]), /larger than/);
    await refused(layZip([said(1000)]), /zeros is damaged/);
    await refused(layZip([said(2 ** 22)]), /zeros is damaged/);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(100 * 2 ** 20);
  });
});
