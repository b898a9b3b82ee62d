import fc from 'fast-check';
import { unzipSync } from 'fflate';
import { writeReview } from '../../../src/io/review/index.ts';
import { layZip, type Laid } from '../archive/zip.ts';
import { madeUp } from './made-up.ts';

/** A sound file of a review, as names and bytes. */
export async function goodFiles(): Promise<readonly Laid[]> {
  const bytes = new Uint8Array(await (await writeReview(madeUp())).arrayBuffer());
  return Object.entries(unzipSync(bytes)).map(([name, content]) => ({ name, bytes: content }));
}

/** Values, as JSON, that nobody should find where they expect something else. */
const VALUES: readonly string[] = [
  'null',
  'true',
  '0',
  '-1',
  '1e308',
  '-1e308',
  '1e-320',
  '0.5',
  '9007199254740993',
  '4294967296',
  '""',
  '[]',
  '{}',
  '[[]]',
  '[null]',
  '"<script>window.harmed=1</script>"',
  '"<img src=x onerror=window.harmed=1>"',
  '"javascript:window.harmed=1"',
  '"\\u202egnp.exe"',
  '"\\u0000"',
  '"\\ud800"',
  '"../../etc/passwd"',
  '"sound/1.webm"',
  '"manifest.json"',
  '"__proto__"',
  '{"__proto__":{"harmed":1}}',
  '{"constructor":{"prototype":{"harmed":1}}}',
  '{"length":1e9}',
  `"${'x'.repeat(100_000)}"`,
  `${'['.repeat(5000)}${']'.repeat(5000)}`,
  `${'{"a":'.repeat(3000)}1${'}'.repeat(3000)}`,
  `[${'{},'.repeat(3000)}{}]`,
];

/** Every place in a JSON value at which something stands, as keys from its root. */
function placesIn(value: unknown, path: readonly string[] = []): readonly (readonly string[])[] {
  if (value === null || typeof value !== 'object') return [path];
  return [path, ...Object.entries(value).flatMap(([key, part]) => placesIn(part, [...path, key]))];
}

const MARK = '"at this place"';

/** JSON with one place taken out, doubled, given a strange name, or holding something strange. */
function changedJson(bytes: Uint8Array, at: number, how: number, text: string): Uint8Array {
  const root = JSON.parse(new TextDecoder().decode(bytes)) as unknown;
  const places = placesIn(root);
  const path = places[at % places.length]!;
  const last = path.at(-1);
  if (last === undefined) return new TextEncoder().encode(text);
  const holder = path.slice(0, -1).reduce((part, key) => (part as Record<string, unknown>)[key], root);
  const holding = holder as Record<string, unknown>;
  const value = holding[last];
  if (how === 0) Reflect.deleteProperty(holding, last);
  else if (how === 1) holding[`${last}\u0000`] = value;
  else if (how === 2 && Array.isArray(holder)) holder.push(value);
  else holding[last] = 'at this place';
  return new TextEncoder().encode(JSON.stringify(root).replace(MARK, () => text));
}

const index = fc.nat(1_000_000);
const value = fc.constantFrom(...VALUES);

/** What of a good file is changed, and how; each draws one mutated file. */
export function mutatedFiles(
  files: readonly Laid[],
): Readonly<Record<string, fc.Arbitrary<Uint8Array<ArrayBuffer>>>> {
  const good = layZip(files);
  const inFile = (name: RegExp) => files.filter((file) => name.test(String(file.name)));
  const changed = (name: RegExp) =>
    fc.tuple(index, index, fc.nat(5), value).map(([which, at, how, text]) => {
      const chosen = inFile(name)[which % inFile(name).length]!;
      return layZip(
        files.map((file) =>
          file === chosen ? { ...file, bytes: changedJson(file.bytes, at, how, text) } : file,
        ),
      );
    });
  return {
    'bytes flipped': fc
      .array(fc.tuple(index, fc.integer({ min: 1, max: 255 })), { minLength: 1, maxLength: 8 })
      .map((flips) => {
        const bytes = good.slice();
        for (const [at, bits] of flips) bytes[at % bytes.length]! ^= bits;
        return bytes;
      }),
    'bytes of the directory flipped': fc.tuple(index, fc.integer({ min: 1, max: 255 })).map(([at, bits]) => {
      const bytes = good.slice();
      bytes[bytes.length - 1 - (at % 500)]! ^= bits;
      return bytes;
    }),
    'cut short or in the middle': fc.tuple(index, index).map(([a, b]) => {
      const [from, to] = [a % good.length, b % good.length].sort((x, y) => x - y) as [number, number];
      return Uint8Array.from([...good.subarray(0, from), ...good.subarray(to)]);
    }),
    'files left out, doubled, swapped or renamed': fc.tuple(index, index, fc.nat(4)).map(([a, b, how]) => {
      const [one, two] = [a % files.length, b % files.length];
      const laid = [...files];
      if (how === 0) laid.splice(one, 1);
      if (how === 1) laid.push(files[one]!);
      if (how === 2) laid[one] = { ...files[one]!, bytes: files[two]!.bytes };
      if (how === 3) laid[one] = { ...files[one]!, name: `reports/${b % 300}.json` };
      if (how === 4)
        laid.push({
          name: ['../x', 'x.html', 'a\\b', '/x', 'MANIFEST.JSON', 'reports/01.json'][b % 6]!,
          bytes: files[one]!.bytes,
        });
      return layZip(laid);
    }),
    'lies in the directory': fc
      .tuple(
        index,
        fc.constantFrom('crc', 'packedBytes', 'sizeBytes', 'headerAt', 'flags', 'method' as const),
        fc.nat(0xffff_ffff),
      )
      .map(([which, field, lie]) =>
        layZip(
          files.map((file, at) =>
            at === which % files.length
              ? { ...file, [field]: field === 'flags' || field === 'method' ? lie & 0xffff : lie }
              : file,
          ),
        ),
      ),
    'what it says of itself changed': changed(/^manifest/),
    'reports changed': changed(/^reports/),
    'other bytes': fc.uint8Array({ maxLength: 400 }).map((bytes) => Uint8Array.from(bytes)),
  };
}
