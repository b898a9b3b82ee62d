import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import Ajv from 'ajv/dist/2020.js';
import { strToU8, zipSync } from 'fflate';
import { exportMidi, parse, parseAbc, serialize, serializeCompressed } from 'musicxml-io';
import { describe, expect, it } from 'vitest';
import { buildExercise, passageId } from '../../../src/engine/index.ts';
import type { ExerciseChoice } from '../../../src/engine/index.ts';
import { encodePassages, openPassages } from '../../../src/io/scores/index.ts';
import { tellTrouble, troubleOf } from '../../../src/io/troubles/index.ts';
import { inventedPassages } from '../../support/passages.ts';
import { asMusicXml } from '../../support/scores.ts';

const file = (content: string | Uint8Array<ArrayBuffer>): File => new File([content], 'from outside.x');
const open = async (content: string | Uint8Array<ArrayBuffer>): Promise<ExerciseChoice> =>
  (await openPassages(file(content)))[0]!;
/** What is to be struck when, to a thousandth of a beat. */
const played = (choice: ExerciseChoice): readonly string[] =>
  buildExercise(choice).steps.map(
    ({ beat, bar, notes }) =>
      `${bar} ${beat.toFixed(3)} ${notes.map(({ midi, hand, finger }) => `${midi} ${hand} ${finger ?? '-'}`).join(', ')}`,
  );

const ABC = `X:1
T:Two hands
M:3/4
L:1/8
Q:1/4=66
K:G
V:1
D2 | G>A B2 (3ABc | [GB]4- [GB]2 |]
V:2 clef=bass
z2 | G,2 [B,D]2 [B,D]2 | G,6 |]
`;

describe('a passage out of a file of music', () => {
  it('is the same that was written to MusicXML, plain and packed, whatever its metre, hands and rhythm', async () => {
    for (const choice of inventedPassages(30)) {
      const score = asMusicXml(choice);
      for (const content of [serialize(score), new Uint8Array(serializeCompressed(score))]) {
        const read = await open(content);
        expect(read.key).toBe(choice.key);
        expect(read.hands).toBe(choice.hands);
        expect(read.passage!.title).toBe(choice.passage!.title);
        expect(read.passage!.bpm).toBe(choice.passage!.bpm);
        expect(read.passage!.bars).toEqual(choice.passage!.bars);
        expect(played(read)).toEqual(played(choice));
      }
    }
  });

  it('is the same out of MIDI that another library wrote, laid on its grid', async () => {
    for (const choice of inventedPassages(12)) {
      const read = await open(new Uint8Array(exportMidi(asMusicXml(choice))));
      expect(played(read).map((step) => step.replace(/ (left|right)/g, ''))).toEqual(
        played(choice).map((step) => step.replace(/ (left|right)/g, '')),
      );
      if (choice.hands === 'together') expect(read.hands).toBe('together');
    }
  });

  it('is read from ABC 2.1: upbeat, dotted pair, triplet, ties, two voices', async () => {
    const read = await open(ABC);
    expect(read).toMatchObject({
      key: 'G major',
      hands: 'together',
      passage: { title: 'Two hands', bpm: 66 },
    });
    expect(played(read)).toEqual([
      '0 0.000 62 right -',
      '1 1.000 55 left -, 67 right -',
      '1 1.750 69 right -',
      '1 2.000 59 left -, 62 left -, 71 right -',
      '1 3.000 59 left -, 62 left -, 69 right -',
      '1 3.333 71 right -',
      '1 3.667 72 right -',
      '2 4.000 55 left -, 67 right -, 71 right -',
    ]);
    const last = read.passage!.notes.filter(({ beat }) => beat === 4);
    expect(last.map(({ beats }) => beats)).toEqual([3, 3, 3]);
  });

  it('brings fingers, and one staff is the hand’s whose clef it has', async () => {
    const score = parse(
      serialize(parseAbc('X:1\nM:4/4\nL:1/4\nK:C bass\nC, D, E, F, | G,4 |]\n')).replace(
        '<type>quarter</type>',
        '<type>quarter</type><notations><technical><fingering>5</fingering></technical></notations>',
      ),
    );
    const read = await open(serialize(score));
    expect(read.hands).toBe('left');
    expect(read.passage!.notes[0]!.finger).toBe(5);
    expect(read.passage!.notes[1]!.finger).toBeUndefined();
  });

  it('is cut out of a longer piece by its bars', async () => {
    const bars = Array.from({ length: 40 }, (_, at) => (at % 2 === 0 ? 'CDEF' : 'GABc')).join('|');
    const long = `X:1\nM:4/4\nL:1/4\nK:C\n${bars}|]\n`;
    await expect(openPassages(file(long))).rejects.toThrow(/40 bars; a passage has up to 16/);
    const [cut] = await openPassages(file(long), { from: 12, to: 13 });
    expect(cut!.passage!.bars).toHaveLength(2);
    expect(played(cut!).map((step) => step.split(' ')[2])).toEqual(
      [67, 69, 71, 72, 60, 62, 64, 65].map(String),
    );
    await expect(openPassages(file(long), { from: 39, to: 41 })).rejects.toThrow(/no bars 39 to 41/);
  });

  it('goes out as one file and comes in again, by the published schema', async () => {
    const own = inventedPassages(9);
    const text = encodePassages(own);
    const again = await openPassages(file(text));
    expect(again).toEqual(own.map((choice) => buildExercise(choice).choice));
    const schema: unknown = JSON.parse(
      readFileSync(resolve(import.meta.dirname, '../../../src/io/scores/passages.schema.json'), 'utf8'),
    );
    const ajv = new Ajv({ strict: false });
    expect(ajv.validate(schema as object, JSON.parse(text))).toBe(true);
    expect(new Set(again.map(({ passage }) => passageId(passage!))).size).toBe(9);
  });
});

const xml = (measures: string, part = ''): string =>
  `<?xml version="1.0"?><score-partwise version="4.0"><part-list><score-part id="P1"><part-name>x</part-name></score-part>${part}</part-list><part id="P1">${measures}</part></score-partwise>`;
const note = (step: string, more = '', duration = '<duration>1</duration>'): string =>
  `<note>${more}<pitch><step>${step}</step><octave>4</octave></pitch>${duration}</note>`;
const bar = (content: string): string =>
  `<measure number="1"><attributes><divisions>1</divisions></attributes>${content}</measure>`;

describe('a file that holds no passage is refused with the reason', () => {
  const bomb = `<?xml version="1.0"?><!DOCTYPE score-partwise [<!ENTITY a "aaaaaaaaaa">${'bcdefghij'
    .split('')
    .map((name, at) => `<!ENTITY ${name} "${`&${'abcdefghi'[at]};`.repeat(10)}">`)
    .join('')}]>${xml(bar(note('C'))).slice(21)}`;
  const cyclic =
    '<?xml version="1.0"?><!DOCTYPE score-partwise [<!ENTITY a "&b;"><!ENTITY b "&a;">]><score-partwise/>';
  const rows: readonly (readonly [string, string | Uint8Array<ArrayBuffer>, RegExp])[] = [
    ['nothing', '', /empty/],
    ['entities that multiply', bomb, /defines entities/],
    ['entities that mean each other', cyclic, /defines entities/],
    ['a page of the web', '<!doctype html><html><body>music</body></html>', /no music that is read here/],
    ['other JSON', '{"format":"something"}', /no music that is read here/],
    ['passages of a later version', '{"format":"evenfall-passages","version":2}', /newer version/],
    ['passages without notes', '{"format":"evenfall-passages","version":1,"passages":[]}', /damaged/],
    ['MusicXML by time', '<score-timewise version="4.0"></score-timewise>', /by time/],
    ['MusicXML without music', xml(''), /no notes/],
    ['MusicXML cut short', xml(bar(note('C') + note('D'))).slice(0, 180), /damaged/],
    ['tags in tags without end', `<score-partwise>${'<a>'.repeat(100_000)}`, /damaged/],
    ['grace notes', xml(bar(note('C', '<grace/>', '') + note('D') + note('E'))), /grace notes/],
    ['drums', xml(bar('<note><unpitched/><duration>1</duration></note>')), /without pitch/],
    [
      'a transposing instrument',
      xml(
        bar(
          `<attributes><transpose><chromatic>-2</chromatic></transpose></attributes>${note('C')}${note('D')}`,
        ),
      ),
      /transposing/,
    ],
    ['a single moment', xml(bar(note('C'))), /two moments/],
    [
      'divisions of nothing',
      xml(`<measure number="1"><attributes><divisions>0</divisions></attributes>${note('C')}</measure>`),
      /damaged/,
    ],
    [
      'three staves',
      xml(
        bar(
          ['1', '2', '3']
            .map((staff) => note('C', '', `<duration>1</duration><staff>${staff}</staff>`))
            .join(''),
        ),
      ),
      /3 staves/,
    ],
    [
      'a zip of other things',
      new Uint8Array(zipSync({ 'a.txt': strToU8('hello') })),
      /no music that is read here/,
    ],
    ['a broken zip', new Uint8Array([0x50, 0x4b, 3, 4, 1, 2, 3]), /zip/],
    [
      'a broken MIDI file',
      new Uint8Array(strToU8('MThd\u0000\u0000\u0000\u0006\u0000\u0001')),
      /no notes|damaged/,
    ],
    ['no bytes of any kind', new Uint8Array([1, 2, 3, 250, 251]), /no music that is read here/],
  ];
  for (const [name, content, why] of rows)
    it(name, async () => {
      const thrown: unknown = await openPassages(file(content)).catch((error: unknown) => error);
      const trouble = troubleOf(thrown);
      expect(trouble.trouble).not.toBe('unforeseen');
      expect(tellTrouble(trouble)).toMatch(why);
      expect(tellTrouble(trouble, 'de').length).toBeGreaterThan(10);
    });

  it('one that unpacks to more than any music', async () => {
    const swollen = zipSync({ 'score.musicxml': new Uint8Array(64 * 2 ** 20) }, { level: 9 });
    await expect(openPassages(file(new Uint8Array(swollen)))).rejects.toThrow(/larger than|far more/);
  });
});
