import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/index.ts';
import { openPassages } from '../../../src/io/scores/index.ts';
import type { Bars } from '../../../src/io/scores/index.ts';
import { ScoreError } from '../../../src/io/scores/types.ts';

/** What musicians write in MusicXML that is no piano's, as the "w3c/musicxml docs examples" show it; the notes are our own. */

const note = (key: string, more = ''): string => {
  const [, step, octave] = /^([A-G])(\d)$/.exec(key)!;
  return `<note><pitch><step>${step}</step><octave>${octave}</octave></pitch><duration>1</duration>${more}</note>`;
};
const bent = (alter: string, more = ''): string =>
  `<note><pitch><step>F</step>${alter}<octave>4</octave></pitch><duration>1</duration>${more}</note>`;
const grace = '<note><grace/><pitch><step>C</step><octave>4</octave></pitch></note>';
const drum = '<note><unpitched/><duration>1</duration></note>';
const clef = (sign: string): string => `<clef><sign>${sign}</sign><line>2</line></clef>`;
const START =
  '<divisions>1</divisions><key><fifths>1</fifths></key><time><beats>2</beats><beat-type>4</beat-type></time>';

/** Parts of bars of two quarters; `said`: further attributes of the first. */
const score = (...parts: readonly { readonly bars: readonly string[]; readonly said?: string }[]): File => {
  const measures = parts.map(({ bars, said = clef('G') }, part) => {
    const written = bars.map((bar, at) => {
      const attributes = at === 0 ? `<attributes>${START}${said}</attributes>` : '';
      return `<measure number="${at + 1}">${attributes}${bar}</measure>`;
    });
    return `<part id="P${part}">${written.join('')}</part>`;
  });
  const list = parts.map((_, part) => `<score-part id="P${part}"><part-name>x</part-name></score-part>`);
  const xml = `<score-partwise version="4.0"><part-list>${list.join('')}</part-list>${measures.join('')}</score-partwise>`;
  return new File([xml], 'from outside.musicxml');
};
const struck = async (file: File, bars: Bars | null = null): Promise<readonly string[]> => {
  const [choice] = await openPassages(file, bars);
  return buildExercise(choice!).steps.map(({ notes }) =>
    notes.map(({ midi, hand }) => `${midi} ${hand}`).join(', '),
  );
};
const whyNot = async (file: File, bars: Bars | null = null): Promise<string> => {
  const thrown: unknown = await openPassages(file, bars).catch((error: unknown) => error);
  return thrown instanceof ScoreError ? thrown.trouble.trouble : 'read';
};

describe('music that was not written for a piano', () => {
  it('is read as it sounds where it is written an octave off, and without its tablature', async () => {
    const said = `${clef('G')}<transpose><chromatic>0</chromatic><octave-change>-1</octave-change></transpose>`;
    const guitar = { bars: [note('G4') + note('B4'), note('A4') + note('D5')], said };
    const tablature = { bars: [note('G3') + note('B3'), note('A3') + note('D4')], said: clef('TAB') };
    const read = ['55 right', '59 right', '57 right', '62 right'];
    expect(await struck(score(guitar, tablature))).toEqual(read);
    expect(await struck(score(tablature, guitar))).toEqual(read);
    expect(await struck(score(tablature))).toEqual(read);
  });

  it('is not rounded to keys where it lies between them', async () => {
    const last = { bars: [note('G4') + note('B4'), bent('<alter>1</alter>') + note('G4')] };
    expect(await whyNot(score(last))).toBe('read');
    const between = [
      bent('<alter>0.5</alter>'),
      bent('', '<accidental smufl="accSagittal5CommaDown">other</accidental>'),
      bent('', '<accidental>quarter-flat</accidental>'),
    ];
    for (const one of between)
      expect(await whyNot(score({ bars: [note('G4') + note('B4'), one + note('G4')] }))).toBe(
        'music-between-keys',
      );
  });

  it('keeps the key that is said after signs that belong to none', async () => {
    const signs = '<attributes><key><key-step>B</key-step><key-alter>-1.5</key-alter></key></attributes>';
    const later = '<attributes><key><fifths>-2</fifths></key></attributes>';
    const bars = [`${note('G4')}${note('B4')}`, `${later}${note('A4')}${note('D5')}`];
    const file = score({ bars, said: clef('G') });
    const text = (await file.text())
      .replace(/<key><fifths>1.*?<\/key>/, '')
      .replace('<attributes>', `${signs}$&`);
    expect((await openPassages(new File([text], 'x')))[0]!.key).toBe('Bb major');
  });
});

describe('what hinders in some bars', () => {
  const plain = note('G4') + note('B4');
  const left = (number: number): string =>
    `<barline location="left"><ending number="${number}" type="start"/></barline>`;
  const right = (number: number): string =>
    `<barline location="right"><ending number="${number}" type="stop"/><repeat direction="backward"/></barline>`;

  it('does not hinder in the others', async () => {
    for (const [hindrance, why] of [
      [grace, 'music-grace'],
      [drum, 'music-no-pitches'],
      [bent('<alter>-0.5</alter>'), 'music-between-keys'],
    ] as const) {
      const file = score({ bars: [plain, hindrance + note('D5'), note('A4') + note('D5')] });
      expect(await whyNot(file)).toBe(why);
      expect(await whyNot(file, { from: 2, to: 3 })).toBe(why);
      expect(await struck(file, { from: 3, to: 3 })).toEqual(['69 right', '74 right']);
    }
  });

  it('asks for other bars where others would do', async () => {
    const bars = async (...written: readonly string[]): Promise<unknown> => {
      const thrown: unknown = await openPassages(score({ bars: written })).catch((error: unknown) => error);
      return thrown instanceof ScoreError && 'bars' in thrown.trouble
        ? thrown.trouble.bars
        : 'none asked for';
    };
    expect(await bars(plain, grace + plain, plain)).toBe(3);
    expect(await bars(grace + plain)).toBeNull();
    expect(await bars(drum + drum, drum + drum)).toBeNull();
  });

  it('a first and a second ending, which nobody plays in a row', async () => {
    const first = left(1) + note('A4') + note('D5') + right(1);
    const second = left(2) + note('E5') + note('D5') + right(2);
    const file = score({ bars: [plain, first, second, plain] });
    expect(await whyNot(file)).toBe('music-endings');
    expect(await whyNot(file, { from: 2, to: 3 })).toBe('music-endings');
    expect(await struck(file, { from: 1, to: 2 })).toEqual(['67 right', '71 right', '69 right', '74 right']);
    expect(await struck(file, { from: 3, to: 4 })).toEqual(['76 right', '74 right', '67 right', '71 right']);
  });

  it('what no piano has says which: one moment only, or keys beyond its own', async () => {
    expect(await whyNot(score({ bars: [note('G4')] }))).toBe('music-one-moment');
    expect(await whyNot(score({ bars: [note('G4') + note('D9')] }))).toBe('music-beyond-keys');
  });
});
