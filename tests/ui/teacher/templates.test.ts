import { describe, expect, it } from 'vitest';
import type { Assigned } from '../../../src/io/review/index.ts';
import { Teaching } from '../../../src/ui/teacher/state/teaching.svelte.ts';
import { devicesWith, MemoryStore, settled, SlowSorters } from './rig.ts';

const SLOWLY: Assigned = {
  exercise: { key: 'D major', form: 'scale', hands: 'right', octaves: 2 },
  targetBpm: 60,
  inARow: null,
  evennessPercent: null,
  note: '',
  intention: { times: 1, rhythm: 'long-short' },
};

async function opened(store = new MemoryStore()) {
  const teaching = new Teaching(devicesWith(store, new SlowSorters()));
  await teaching.load();
  await settled();
  return { teaching, templates: teaching.templates, store };
}
const words = (all: readonly { readonly words: string }[]): readonly string[] => all.map((one) => one.words);

describe('words that the teacher uses again', () => {
  it('are kept once, those used most first, and are there after the page was closed', async () => {
    const { templates, store } = await opened();
    for (const one of ['Lovely and calm.', ' Thumb under sooner. ', 'Lovely and calm.', '  '])
      await templates.keep(one);
    expect(words(templates.remarks)).toEqual(['Lovely and calm.', 'Thumb under sooner.']);
    expect([templates.has(' Thumb under sooner.'), templates.has('Thumb')]).toEqual([true, false]);
    await templates.use(templates.remarks[1]!);
    expect(words((await opened(store)).templates.remarks)).toEqual([
      'Thumb under sooner.',
      'Lovely and calm.',
    ]);
  });

  it('are exercises too, each as it is to be practised; the same name takes newer ones', async () => {
    const { templates } = await opened();
    await templates.keep('Week of thumbs', [SLOWLY]);
    expect(templates.assignments.map(({ assignment }) => assignment)).toEqual([[SLOWLY]]);
    expect(templates.remarks).toEqual([]);
    await templates.keep('Week of thumbs', [SLOWLY, { ...SLOWLY, targetBpm: 72 }]);
    expect(templates.assignments.map(({ assignment }) => assignment.length)).toEqual([2]);
  });

  it('come back when they were deleted by mistake', async () => {
    const { templates } = await opened();
    await templates.keep('Lovely and calm.');
    await templates.remove(templates.remarks[0]!);
    expect(templates.remarks).toEqual([]);
    await templates.takeBack();
    expect(words(templates.remarks)).toEqual(['Lovely and calm.']);
  });

  it('that another window kept are here too', async () => {
    const { templates, store } = await opened();
    await store.addTemplates([{ id: 'any', words: 'Lovely and calm.', used: 0 }]);
    store.changed({ students: [], files: [], playings: [], templates: ['any'] });
    await settled();
    expect(words(templates.remarks)).toEqual(['Lovely and calm.']);
  });

  it('are said not to be kept where the device has no room', async () => {
    const { teaching, templates, store } = await opened();
    store.full = true;
    await templates.keep('Lovely and calm.');
    expect(templates.remarks).toEqual([]);
    expect(teaching.lists.trouble).not.toBeNull();
  });
});
