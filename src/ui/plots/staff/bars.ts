import { notesABeat, playedBy, type Exercise, type ExpectedStep, type Hand } from '../../../engine/index.ts';
import { signsOf, type Meant, type StaffSign } from './meant.ts';

export type Clef = 'treble' | 'bass';

/** One note or chord of one hand, ready to be engraved. */
export interface StaffEvent {
  readonly step: number;
  readonly clef: Clef;
  /** e.g. "g#/4", ascending, an octave lower a mark of `octavesUp` */
  readonly keys: readonly string[];
  /** finger numbers, from the lowest key up */
  readonly fingers: readonly number[];
  readonly duration: '32' | '16' | '8' | 'q' | 'h' | 'w';
  readonly dots: 0 | 1;
  /** written this many octaves lower than it sounds: 1 = 8va, 2 = 15ma */
  readonly octavesUp: 0 | 1 | 2;
  /** beat within the bar, for beaming */
  readonly beat: number;
  readonly signs: readonly StaffSign[];
  /** of a passage: nothing sounds */
  readonly rest?: true;
  /** of a passage: it sounds on in the next event, or has from the one before */
  readonly tie?: 'on' | 'from' | 'through';
  /** of a passage: the triplet that it belongs to, and which notes share a beam */
  readonly triplet?: number;
  readonly beam?: number;
}

export interface StaffPart {
  readonly hand: Hand;
  /** at the start of the bar; single notes may have another further on */
  readonly clef: Clef;
  readonly events: readonly StaffEvent[];
}

/** A bar of the exercise; right hand first. */
export interface Bar {
  readonly index: number;
  readonly parts: readonly StaffPart[];
  readonly last: boolean;
  /** a time signature that is written at its beginning, e.g. "3/4" */
  readonly time?: string;
  /** of a passage: where it begins and ends, quarter notes */
  readonly beats?: { readonly from: number; readonly to: number };
}

/** Four beats, two where six notes go to each: more would not fit a screen. */
const beatsABar = (perBeat: number): number => (perBeat === 6 ? 2 : 4);

/** Highest keys written without and with one octave mark: A6 and A7, four ledger lines. Common practice, no source. */
const HIGHEST_PLAIN = 93;
const HIGHEST_8VA = 105;
/** A clef is kept up to three ledger lines: G4 in the bass clef, F3 in the treble clef. Common practice, no source. */
const BASS_UP_TO = 67;
const TREBLE_DOWN_TO = 53;
/** Clefs change only between groups of two beats, where the beams do. */
const BEATS_A_GROUP = 2;

/** Exercise → its bars, with the signs of what is meant. There is no time signature: the last note fills its bar. */
export function writeBars(exercise: Exercise, meant: Meant | null = null): readonly Bar[] {
  const { steps } = exercise;
  const perBeat = isBlocked(exercise) ? 1 : notesABeat(exercise.choice);
  const signs = signsOf(exercise, meant);
  const hands = (['right', 'left'] as const).filter((hand) =>
    steps.some((step) => step.notes.some((note) => note.hand === hand)),
  );
  const barBeats = beatsABar(perBeat);
  const count = Math.floor((steps.at(-1)?.beat ?? 0) / barBeats + 1e-6) + 1;
  const parts = hands.map((hand) => writePart(hand, steps, perBeat, signs));
  return Array.from({ length: count }, (_, index) => ({
    index,
    last: index === count - 1,
    parts: parts.map(({ hand, events }) => {
      const inBar = events.filter((event) => Math.floor(steps[event.step]!.beat / barBeats + 1e-6) === index);
      return { hand, clef: inBar[0]?.clef ?? 'treble', events: inBar };
    }),
  }));
}

const isBlocked = ({ practised }: Exercise): boolean => practised?.intention.blocked === true;

function writePart(
  hand: Hand,
  steps: readonly ExpectedStep[],
  perBeat: number,
  signs: ReadonlyMap<number, readonly StaffSign[]>,
): Omit<StaffPart, 'clef'> {
  const clefs = chooseClefs(hand, steps);
  const barBeats = beatsABar(perBeat);
  const events = steps.map((step): StaffEvent => {
    const notes = step.notes.flatMap((note) => playedBy(hand, note));
    const highest = Math.max(...notes.map((note) => note.midi));
    const octavesUp = highest > HIGHEST_8VA ? 2 : highest > HIGHEST_PLAIN ? 1 : 0;
    const beat = step.beat % barBeats;
    const own = signs.get(step.step) ?? [];
    return {
      step: step.step,
      clef: clefs[groupOf(step)]!,
      keys: notes.map((note) => vexKey(note.name, octavesUp)),
      fingers: notes.flatMap((note) => note.finger ?? []),
      octavesUp,
      beat,
      signs: own,
      ...noteValue(
        perBeat,
        step.step === steps.length - 1 ? barBeats - beat : null,
        lengthOf(step, steps[step.step + 1], perBeat, own),
      ),
    };
  });
  return { hand, events };
}

const groupOf = (step: ExpectedStep): number => Math.floor(step.beat / BEATS_A_GROUP + 1e-6);

/** One clef a group, changed only when notes would lie too far from the staff. */
function chooseClefs(hand: Hand, steps: readonly ExpectedStep[]): readonly Clef[] {
  const groups = Array.from({ length: groupOf(steps.at(-1)!) + 1 }, (_, group) =>
    steps
      .filter((step) => groupOf(step) === group)
      .flatMap((step) => step.notes.filter((note) => note.hand === hand).map((note) => note.midi)),
  );
  let clef: Clef = hand === 'right' ? 'treble' : 'bass';
  return groups.map((midis) => {
    if (clef === 'bass' && Math.max(...midis) > BASS_UP_TO) clef = 'treble';
    else if (clef === 'treble' && Math.min(...midis) < TREBLE_DOWN_TO) clef = 'bass';
    return clef;
  });
}

/** How many usual steps a note lasts; before a stop it is let go after its own, unless it is held. */
function lengthOf(
  { beat }: ExpectedStep,
  next: ExpectedStep | undefined,
  perBeat: number,
  signs: readonly StaffSign[],
): number {
  if (next === undefined || signs.includes('breath')) return 1;
  return Math.round(4 * perBeat * (next.beat - beat)) / 4;
}

/** Half a step, a step and two of them, by how many go to a beat; of three they are eighths too, of six sixteenths. */
const NOTE_VALUES = { 1: ['8', 'q', 'h'], 2: ['16', '8', 'q'], 4: ['32', '16', '8'] } as const;

/** So many beats that are dotted quarters, as one note. */
const DOTTED_BEATS: Readonly<Record<number, Pick<StaffEvent, 'duration' | 'dots'>>> = {
  1: { duration: 'q', dots: 1 },
  2: { duration: 'h', dots: 1 },
  4: { duration: 'w', dots: 1 },
};
const valuesFor = (perBeat: number): keyof typeof NOTE_VALUES => (perBeat === 1 ? 1 : perBeat < 4 ? 2 : 4);

/** How long a note is written. `beatsLeft` is given for the last note, which fills its bar. */
function noteValue(
  perBeat: number,
  beatsLeft: number | null,
  steps: number,
): Pick<StaffEvent, 'duration' | 'dots'> {
  const [half, one, two] = NOTE_VALUES[valuesFor(perBeat)];
  const usual = { duration: one, dots: 0 } as const;
  if (steps === 0.5) return { duration: half, dots: 0 };
  if (steps === 1.5) return { duration: one, dots: 1 };
  if (steps === 2) return { duration: two, dots: 0 };
  if (beatsLeft === null) return usual;
  if (perBeat % 3 === 0) return DOTTED_BEATS[beatsLeft] ?? usual;
  switch (Math.round(beatsLeft * 2) / 2) {
    case 1:
      return { duration: 'q', dots: 0 };
    case 2:
      return { duration: 'h', dots: 0 };
    case 3:
      return { duration: 'h', dots: 1 };
    case 4:
      return { duration: 'w', dots: 0 };
    default:
      return usual;
  }
}

/** "G#4" → "g#/4" */
export function vexKey(name: string, octavesUp: number): string {
  const [, pitch = '', octave = '4'] = /^(.+?)(-?\d+)$/.exec(name) ?? [];
  return `${pitch.toLowerCase()}/${Number(octave) - octavesUp}`;
}

/** "F# minor" → "F#m", "Ab major" → "Ab": how VexFlow names a key signature. */
export function vexKeySignature(key: string): string {
  const [tonic = 'C', mode] = key.split(' ');
  return mode === 'minor' ? `${tonic}m` : tonic;
}

/** Room that a bar needs, px at scale 1. */
export function barWidthPx(bar: Bar): number {
  const most = Math.max(1, ...bar.parts.map((part) => part.events.length));
  return 34 + most * 29;
}

/** Room for clef and key signature at the head of a system, px at scale 1. */
export function headWidthPx(signatureCount: number): number {
  return 46 + signatureCount * 11;
}

/** Room for a time signature, px at scale 1. */
export function timeWidthPx({ time }: Bar): number {
  return time === undefined ? 0 : 30;
}

/** Bars → systems that fit the width, as equal as can be; a bar wider than the page stands alone. */
export function breakSystems(
  bars: readonly Bar[],
  widthPx: number,
  signatureCount: number,
): readonly (readonly Bar[])[] {
  const room = widthPx - headWidthPx(signatureCount) - Math.max(0, ...bars.map(timeWidthPx));
  const widest = Math.max(...bars.map(barWidthPx));
  const most = Math.max(1, Math.floor(room / widest));
  const rows = Math.ceil(bars.length / most);
  const each = Math.ceil(bars.length / rows);
  return Array.from({ length: rows }, (_, row) => bars.slice(row * each, (row + 1) * each)).filter(
    (row) => row.length > 0,
  );
}
