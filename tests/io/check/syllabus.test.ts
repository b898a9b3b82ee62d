import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { USUAL_GOALS } from '../../../src/engine/index.ts';
import { parseJson, readSyllabus } from '../../../src/io/check/index.ts';

const { syllabus } = USUAL_GOALS;
const read = (text: string) => readSyllabus(parseJson(new TextEncoder().encode(text)));
const [first] = syllabus.levels;

describe('levels in a file', () => {
  it('come back as they went out', () => {
    expect(read(JSON.stringify(syllabus, null, 2))).toEqual(syllabus);
  });

  it.each<[string, unknown, string]>([
    ['nothing', null, 'no-levels'],
    ['another file', { format: 'evenfall-journal', version: 1 }, 'no-levels'],
    ['a newer version', { ...syllabus, version: 2 }, 'levels-newer'],
    ['no level', { ...syllabus, levels: [] }, 'levels-damaged'],
    ['a level without a key', { ...syllabus, levels: [{ ...first, keys: [] }] }, 'levels-damaged'],
    ['a key that there is not', { ...syllabus, levels: [{ ...first, keys: ['H major'] }] }, 'levels-damaged'],
    ['a tempo of no metronome', withAsk({ leastBpm: 1e9 }), 'levels-damaged'],
    ['triads over four octaves', withAsk({ form: 'triads', octaves: 4 }), 'levels-damaged'],
    ['a form that there is not', withAsk({ form: '__proto__' }), 'levels-damaged'],
    ['a thousand levels', { ...syllabus, levels: Array(1000).fill(first) }, 'levels-damaged'],
  ])('are refused wholly where they are %s', (_name, value, trouble) => {
    expect(read(JSON.stringify(value))).toMatchObject({ trouble });
  });

  it('that are no JSON, or broken anywhere, are refused or read, and nothing throws', () => {
    const text = JSON.stringify(syllabus);
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.string({ maxLength: 3 }), (at, other) => {
        const found = read(text.slice(0, at) + other + text.slice(at + 1));
        expect('trouble' in found || found.levels.length > 0).toBe(true);
      }),
    );
  });
});

function withAsk(part: object): unknown {
  return { ...syllabus, levels: [{ ...first, asks: [{ ...first!.asks[0], ...part }] }] };
}
