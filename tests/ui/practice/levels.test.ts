import { describe, expect, it } from 'vitest';
import { ALL_FORMS, ALL_KEYS, USUAL_GOALS } from '../../../src/engine/index.ts';
import { readSyllabus } from '../../../src/io/check/index.ts';
import {
  levelWords,
  oneMoreAsk,
  withAsk,
  withLevel,
  withOneMore,
  withoutKey,
} from '../../../src/ui/practice/levels.ts';

const { syllabus } = USUAL_GOALS;
const [first] = syllabus.levels as [(typeof syllabus.levels)[number]];

describe('the levels, changed on the page', () => {
  it('lose no last key, no last form and no last level', () => {
    const bare = { ...first, keys: ['C major'], asks: first.asks.slice(0, 1) };
    expect(withoutKey(bare, 'C major')).toBe(bare);
    expect(withAsk(bare, 0, null)).toBe(bare);
    const only = { ...syllabus, levels: [bare] };
    expect(withLevel(only, 0, null)).toBe(only);
  });

  it('keep to the octaves over which a form is played', () => {
    const { asks } = withAsk(first, 0, { ...first.asks[0]!, form: 'triads', octaves: 4 });
    expect(asks[0]).toMatchObject({ form: 'triads', octaves: 1 });
  });

  it('stay such as are read from a file, whatever is added', () => {
    let now = syllabus;
    for (let more = 0; more < 3; more += 1) now = withOneMore(now);
    const bare = { ...first, asks: first.asks.slice(0, 1) };
    now = withLevel(now, 0, { ...bare, asks: [...bare.asks, oneMoreAsk(bare)!] });
    expect(readSyllabus(JSON.parse(JSON.stringify(now)))).toEqual(now);
    const all = ALL_FORMS.map((form) => ({ ...first.asks[0]!, form }));
    expect(oneMoreAsk({ ...first, asks: all })).toBeNull();
  });

  it('are said shortly', () => {
    expect(levelWords({ ...first, asks: first.asks.slice(0, 3) })).toBe(
      'C major, G major, F major, A minor: arpeggio 1 octave ♩ = 50 · scale 1 octave ♩ = 60 · triads ♩ = 50',
    );
    const asks = [{ ...first.asks[1]!, touch: 'legato', loudnessDb: 2.5 } as const];
    expect(levelWords({ ...first, keys: ALL_KEYS, asks })).toBe(
      'All keys: scale 1 octave ♩ = 60 legato loudness within 2.5\u202fdB',
    );
    expect(levelWords({ ...first, keys: ALL_KEYS, asks: [first.asks[2]!] })).toBe('All keys: triads ♩ = 50');
  });
});
