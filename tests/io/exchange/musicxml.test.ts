import { parse, validate } from 'musicxml-io';
import { Note } from 'tonal';
import { describe, expect, it } from 'vitest';
import { allChoices, keyFacts } from '../../../src/engine/index.ts';
import { encodeMusicXml } from '../../../src/io/exchange/index.ts';
import { invent, INVENTED } from '../../ui/support/invent.ts';

/** What is written is read by a reader that knows nothing of ours, with its own checks: musicxml-io 0.9 (MIT). */

const names = { title: 'C♯ minor & “more” <1>', written: 'Written', played: 'Played' };
type Made = ReturnType<typeof invent>;
const read = ({ report, exercise }: Made) => parse(encodeMusicXml(report, exercise, names));

/** Some of each form, hand and length, in keys with many signs. */
const SOME = allChoices().filter(({ key }) => ['C# minor', 'Db major', 'G# minor', 'C major'].includes(key));

describe('MusicXML', () => {
  it.each(['Written', 'Played'])('names its parts and title, whatever letters they have: %s', (name) => {
    const score = read(invent(INVENTED.together));
    expect(score.metadata.workTitle).toBe(names.title);
    expect(JSON.stringify(score.partList)).toContain(name);
  });

  it('of every form, hand and length is valid to the reader, with whole bars', () => {
    expect(SOME.length).toBeGreaterThan(50);
    for (const choice of SOME) {
      const made = invent({ choice });
      const { valid, errors, warnings } = validate(read(made));
      expect({ valid, errors, warnings }, made.exercise.title).toEqual({
        valid: true,
        errors: [],
        warnings: [],
      });
    }
  });

  it('has every note as the exercise has it, spelt and fingered', () => {
    for (const choice of SOME) {
      const made = invent({ choice });
      const part = read(made).parts[0]!;
      const written = part.measures.flatMap(({ entries }) =>
        entries.flatMap((entry) => {
          if (entry.type !== 'note' || entry.pitch === undefined) return [];
          const { step, alter = 0, octave } = entry.pitch;
          const finger = JSON.stringify(entry.notations ?? []).match(/"text":"(\d)"/)?.[1];
          return [`${step}${alter < 0 ? 'b'.repeat(-alter) : '#'.repeat(alter)}${octave} ${finger}`];
        }),
      );
      const wanted = made.exercise.steps.flatMap(({ notes }) =>
        notes.map(({ name, finger }) => `${name} ${finger}`),
      );
      expect([...written].sort(), made.exercise.title).toEqual([...wanted].sort());
      const [first] = part.measures;
      const { signature, accidental } = keyFacts(choice.key);
      expect(first!.attributes!.key!.fifths).toBe(
        accidental === 'flats' ? -signature.length : signature.length,
      );
    }
  });

  it('shows what was played: the wrong note with a cross, the missed one as a rest, the extra one as a grace note', () => {
    const made = invent(INVENTED.together);
    const entries = read(made).parts[1]!.measures.flatMap(({ entries: all }) => all);
    const notes = entries.flatMap((entry) => (entry.type === 'note' ? [entry] : []));
    const midi = (note: (typeof notes)[number]): number =>
      Note.midi(
        `${note.pitch!.step}${'#'.repeat(Math.max(0, note.pitch!.alter ?? 0))}${'b'.repeat(Math.max(0, -(note.pitch!.alter ?? 0)))}${note.pitch!.octave}`,
      )!;
    const { report } = made;
    const of = (verdict: string): number[] =>
      report.notes.filter((note) => note.verdict === verdict).map((note) => note.midi);
    expect(notes.filter(({ notehead }) => notehead !== undefined).map(midi)).toEqual(of('wrong'));
    expect(notes.filter(({ grace }) => grace !== undefined).map(midi)).toEqual(of('extra'));
    expect(notes.filter(({ rest }) => rest !== undefined).length).toBeGreaterThanOrEqual(
      report.missed.length,
    );
    const plain = notes.filter((note) => note.pitch && !note.notehead && !note.grace);
    expect(plain.map(midi).sort()).toEqual(of('correct').sort());
  });
});
