import { describe, expect, it } from 'vitest';
import { createKeptPassages } from '../../../src/io/scores/kept.ts';
import { encodePassages, openPassages } from '../../../src/io/scores/index.ts';
import { createDrafts, type Settings } from '../../../src/io/settings/index.ts';
import { isScoreFile, Passages } from '../../../src/ui/prepare/passages.svelte.ts';
import { inventedPassages } from '../../support/passages.ts';

const never = (): Promise<never> => Promise.reject(new Error('nothing sounds here'));
const passages = (): Passages =>
  new Passages({
    kept: createKeptPassages(),
    open: openPassages,
    encode: (choices) => Promise.resolve(encodePassages(choices)),
    hearing: { analyst: { analyse: never, cancel: () => undefined }, decode: never, openMicrophone: never },
  });
const OWN = inventedPassages(3);
const titles = ({ list }: Passages): readonly (string | undefined)[] =>
  list.map(({ passage }) => passage?.title);

describe('passages of one’s own on the page', () => {
  it('come with a backup or an assignment: those that are not here yet, and nothing that is none', async () => {
    const own = passages();
    await own.add(OWN[0]!);
    const scale = { key: 'C major', form: 'scale', hands: 'right', octaves: 1 };
    const rubbish = [null, 7, scale, { ...OWN[1]!, passage: { title: 'no notes' } }];
    await own.receive([...OWN.map((one) => JSON.parse(JSON.stringify(one)) as unknown), ...rubbish]);
    expect(titles(own)).toEqual(['Passage 1', 'Passage 2', 'Passage 3']);
  });

  it('go out as one file and come in again among others, of which one is refused', async () => {
    const own = passages();
    await own.receive(OWN);
    const again = passages();
    const file = new File([await own.fileOf(own.list)], 'mine.json');
    const found = await again.openAll([file, new File(['hello'], 'none.abc')]);
    expect(found?.passage?.title).toBe('Passage 1');
    expect(titles(again)).toEqual(titles(own));
    expect(again.refused?.file.name).toBe('none.abc');
  });

  it('under way outlives the page as far as it is written, until it is done or thrown away', () => {
    const kept = new Map<string, string>();
    const drafts = (): Settings =>
      createDrafts(() => ({
        getItem: (name) => kept.get(name) ?? null,
        setItem: (name, value) => void kept.set(name, value),
        removeItem: (name) => void kept.delete(name),
      }));
    const opened = (): Passages => {
      const own = passages();
      own.remember(drafts());
      return own;
    };
    const own = opened();
    expect([own.composing, own.draft]).toEqual([null, null]);
    own.composing = 'new';
    own.layAside(OWN[0]!);
    expect(opened()).toMatchObject({ composing: 'new', draft: OWN[0] });
    opened().leave();
    expect(opened()).toMatchObject({ composing: null, draft: null });

    own.composing = OWN[1]!;
    own.layAside(OWN[2]!);
    const again = opened();
    expect(again).toMatchObject({ composing: OWN[1], draft: OWN[2] });
    again.composing = OWN[0]!;
    expect(again.draft).toBeNull();
    kept.set('evenfall-draft-passage', '{"of":"new","draft":{"key":7}}');
    expect(opened()).toMatchObject({ composing: null, draft: null });
  });

  it.each([
    ['a.musicxml', '', true],
    ['A.MXL', '', true],
    ['b.mid', 'audio/midi', true],
    ['from a phone', 'audio/midi', true],
    ['mine.json', 'application/json', true],
    ['take.wav', 'audio/wav', false],
    ['review.zip', 'application/zip', false],
    ['no ending', '', false],
  ])('%s (%s) is music to be opened: %s', (name, type, is) => expect(isScoreFile({ name, type })).toBe(is));
});
