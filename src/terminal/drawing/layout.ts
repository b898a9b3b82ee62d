import {
  choiceIn,
  exerciseIn,
  isHandKnown,
  lateCrossings,
  noteName,
  octaveIn,
  timelineOf,
} from '../../engine/index.ts';
import type { Exercise, Hand, Language, Report, ReportedNote } from '../../engine/index.ts';
import { REPORTS, localeOf } from '../language/index.ts';

/** How loud a pearl is against the median of its attempt. */
export type Loudness = 'soft' | 'middle' | 'loud';

/** Half the width of "middle", dB: about three times what is audible (0.7–1.2 dB, Slade et al. 2022). */
const MIDDLE_DB = 3;

/** One note on the string. */
export type Pearl = { readonly timeSec: number; readonly hand: Hand } & (
  | { readonly kind: 'struck'; readonly loudness: Loudness }
  | { readonly kind: 'wrong'; readonly loudness: Loudness; readonly name: string; readonly wanted: string }
  | { readonly kind: 'missed' | 'unsure' | 'extra'; readonly name: string }
);

/** What one hand plays at one step: one pearl, or a chord's from the lowest up. */
export interface Spot {
  readonly hand: Hand;
  readonly step: number;
  readonly timeSec: number;
  readonly pearls: readonly Pearl[];
  /** what should sound: "F♯", or a chord's name */
  readonly name: string;
  readonly fingers: string;
  /** crossing into this step, with how late it was where that is known */
  readonly crossing: { readonly delayMs: number | null; readonly late: boolean } | null;
  /** the words speak of it */
  readonly marked: boolean;
}

/** A report laid out in time. */
export interface LaidOut {
  readonly hands: readonly Hand[];
  /** in order of time */
  readonly spots: readonly Spot[];
  /** notes that answer nothing, in order of time */
  readonly extras: readonly Pearl[];
  /** where perfectly even notes would fall, seconds, by step */
  readonly tickSec: ReadonlyMap<number, number>;
}

/** Report → pearls in time. Pure. */
export function layOut(report: Report, language: Language = 'en'): LaidOut {
  const shortName = namedIn(language);
  const exercise = exerciseIn(report);
  const hands: readonly Hand[] =
    report.exercise.hands === 'together' ? ['right', 'left'] : [report.exercise.hands];
  const { tickSec } = timelineOf(report, exercise);
  const spots = hands.flatMap((hand) => spotsOf(report, exercise, hand, tickSec, language));
  const extras = report.notes
    .filter(({ verdict }) => verdict === 'extra')
    .map((note): Pearl => ({
      kind: 'extra',
      timeSec: note.timeSec,
      hand: handOf(note, hands),
      name: shortName(note.name),
    }));
  return {
    hands,
    spots: spots.sort((a, b) => a.timeSec - b.timeSec),
    extras,
    tickSec,
  };
}

/** The choice that a report is about. */
export function choiceOf({ exercise }: Report) {
  return choiceIn(exercise);
}

function spotsOf(
  report: Report,
  exercise: Exercise,
  hand: Hand,
  tickSec: ReadonlyMap<number, number>,
  language: Language,
): Spot[] {
  const shortName = namedIn(language);
  const medianDb = middle(report.notes.map(({ levelDb }) => levelDb));
  const late = lateCrossings(report);
  // Of the other hand they lie elsewhere.
  const known = isHandKnown(report);
  return exercise.steps.flatMap(({ step, notes, crossings, label }): readonly Spot[] => {
    const own = notes.filter((note) => note.hand === hand);
    const played = report.notes.filter(
      (note) => note.step === step && note.verdict !== 'extra' && (note.hand ?? hand) === hand,
    );
    const firstSec = Math.min(...played.map(({ timeSec }) => timeSec));
    const timeSec = Number.isFinite(firstSec) ? firstSec : tickSec.get(step);
    if (own.length === 0 || timeSec === undefined) return [];
    const pearls = own.map(({ midi, name }): Pearl => {
      // Whatever octave the hand lies in: no hand has the same note twice in a chord.
      const same = (other: number): boolean => (other - midi) % 12 === 0;
      const note = played.find((other) => same(other.wantedMidi ?? other.midi));
      if (note === undefined) {
        const unsure = report.unsure.some(
          (other) => other.step === step && other.hand === hand && same(other.midi),
        );
        return { kind: unsure ? 'unsure' : 'missed', timeSec, hand, name: shortName(name) };
      }
      const loudness = loudnessOf(note.levelDb - medianDb);
      if (note.verdict === 'correct') return { kind: 'struck', timeSec: note.timeSec, hand, loudness };
      return {
        kind: 'wrong',
        timeSec: note.timeSec,
        hand,
        loudness,
        ...bothNames(note.name, name, language),
      };
    });
    const crosses = known && crossings.some((crossing) => crossing.hand === hand);
    const delay = report.measures.crossings.find((other) => other.step === step && other.hand === hand);
    return [
      {
        hand,
        step,
        timeSec,
        pearls,
        name: own.length === 1 ? shortName(own[0]!.name) : chordName(label, language),
        fingers: own.map(({ finger }) => finger).join(''),
        crossing: crosses
          ? { delayMs: delay?.delayMs ?? null, late: late.some((one) => one === delay) }
          : null,
        marked: report.words.steps.includes(step),
      },
    ];
  });
}

/** What was struck and what was wanted, as the sentence has it: F natural for F sharp; with octaves where only these differ. */
function bothNames(
  name: string,
  wanted: string,
  language: Language,
): { readonly name: string; readonly wanted: string } {
  const shortName = namedIn(language);
  const [short, shortWanted] = [shortName(name), shortName(wanted)];
  if (short === shortWanted) return { name: short + octaveIn(name), wanted: shortWanted + octaveIn(wanted) };
  const onlyTheSign = localeOf(language).naming !== 'german' && /^.[♯♭]/.test(shortWanted);
  return { name: onlyTheSign && shortWanted.startsWith(short) ? `${short}♮` : short, wanted: shortWanted };
}

/** "G#4" → "G♯", or "Gis" */
const namedIn =
  (language: Language) =>
  (name: string): string =>
    noteName(name, localeOf(language).naming);

/** "root position" → "root", "first inversion" → "1st inv.": there is little room under a chord. */
function chordName(label: string | undefined, language: Language): string {
  const { chords } = REPORTS[language];
  return chords[label ?? ''] ?? label ?? '';
}

function loudnessOf(relativeDb: number): Loudness {
  if (relativeDb < -MIDDLE_DB) return 'soft';
  return relativeDb > MIDDLE_DB ? 'loud' : 'middle';
}

function handOf(note: ReportedNote, hands: readonly Hand[]): Hand {
  return note.hand !== null && hands.includes(note.hand) ? note.hand : hands[0]!;
}

function middle(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
