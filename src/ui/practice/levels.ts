import { ALL_FORMS, ALL_KEYS, octaveCounts } from '../../engine/index.ts';
import type { Ask, Syllabus, SyllabusLevel } from '../../engine/index.ts';
import { shown, withUnit } from '../kit/figures.ts';
import { strings } from '../language/index.ts';
import { shownKey } from '../names/index.ts';
import { tempoWords } from './words.ts';

/** Changes to the levels, each a new table; what would leave a level empty changes nothing. */

export function withLevel(syllabus: Syllabus, at: number, level: SyllabusLevel | null): Syllabus {
  const levels = level === null ? syllabus.levels.toSpliced(at, 1) : syllabus.levels.with(at, level);
  return levels.length === 0 ? syllabus : { ...syllabus, levels };
}

/** One level more, as the last one is, with a key that no level has; with its first where all have one. */
export function withOneMore(syllabus: Syllabus): Syllabus {
  const last = syllabus.levels.at(-1)!;
  const taken = new Set(syllabus.levels.flatMap(({ keys }) => keys));
  const key = ALL_KEYS.find((one) => !taken.has(one)) ?? last.keys[0]!;
  const level = { name: String(syllabus.levels.length + 1), keys: [key], asks: last.asks };
  return { ...syllabus, levels: [...syllabus.levels, level] };
}

export function withoutKey(level: SyllabusLevel, key: string): SyllabusLevel {
  const keys = level.keys.filter((one) => one !== key);
  return keys.length === 0 ? level : { ...level, keys };
}

export function withAsk(level: SyllabusLevel, at: number, ask: Ask | null): SyllabusLevel {
  const asks = ask === null ? level.asks.toSpliced(at, 1) : level.asks.with(at, fitting(ask));
  return asks.length === 0 ? level : { ...level, asks };
}

/** One thing more to ask, of a form that the level does not ask for yet; null: it asks for all. */
export function oneMoreAsk({ asks }: SyllabusLevel): Ask | null {
  const form = ALL_FORMS.find((one) => asks.every((ask) => ask.form !== one));
  return form === undefined ? null : { form, octaves: 1, leastBpm: null, together: true };
}

/** Over as many octaves as the form is played. */
function fitting(ask: Ask): Ask {
  const counts = octaveCounts(ask.form);
  return counts.includes(ask.octaves) ? ask : { ...ask, octaves: counts[0]! };
}

/** "C major, G major, A minor: arpeggio ♩ = 50, scale ♩ = 60" */
export function levelWords({ keys, asks }: SyllabusLevel): string {
  const t = strings().journal;
  const which =
    keys.length === ALL_KEYS.length ? t.levels.allKeys : keys.map((key) => shownKey(key)).join(', ');
  const what = asks.map(({ form, octaves, leastBpm, touch, loudnessDb }) =>
    [
      t.FORMS[form],
      ...(octaveCounts(form).length > 1 ? [t.octaves(octaves)] : []),
      ...(leastBpm === null ? [] : [tempoWords({ form }, leastBpm)]),
      ...(touch === undefined ? [] : [strings().prepare.intend.TOUCHES[touch].toLowerCase()]),
      ...(loudnessDb === undefined
        ? []
        : [t.levels.asksLoudness(withUnit(shown(loudnessDb, loudnessDb % 1 === 0 ? 0 : 1), 'dB'))]),
    ].join(' '),
  );
  return `${which}: ${what.join(' · ')}`;
}
