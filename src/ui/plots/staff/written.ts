import { barlines } from '../../../engine/index.ts';
import type { Exercise, ExpectedNote, ExpectedStep, Hand, OwnPassage } from '../../../engine/index.ts';
import { vexKey, writeBars, type Bar, type Clef, type StaffEvent, type StaffPart } from './bars.ts';
import { signsOf, type Meant } from './meant.ts';

/** A passage as it is written: bars, rests, ties, triplets. Of two voices of one hand the next note ends the one before. */

const NEAR = 2e-3;
/** Lengths that have a note of their own, longest first, quarter notes. */
const VALUES = [
  { beats: 4, duration: 'w', dots: 0 },
  { beats: 3, duration: 'h', dots: 1 },
  { beats: 2, duration: 'h', dots: 0 },
  { beats: 1.5, duration: 'q', dots: 1 },
  { beats: 1, duration: 'q', dots: 0 },
  { beats: 0.75, duration: '8', dots: 1 },
  { beats: 0.5, duration: '8', dots: 0 },
  { beats: 0.375, duration: '16', dots: 1 },
  { beats: 0.25, duration: '16', dots: 0 },
  { beats: 0.125, duration: '32', dots: 0 },
] as const satisfies readonly (Pick<StaffEvent, 'duration' | 'dots'> & { readonly beats: number })[];
const SHORTEST = VALUES.at(-1)!;
/** In a triplet three are written where two would be. */
const TRIPLET = 1.5;
/** Off the beat, only these go over it: syncopations. */
const OVER_THE_BEAT = [1, 1.5, 2];
/** A clef is kept up to three ledger lines. Common practice, no source. */
const BASS_UP_TO = 67;
const TREBLE_DOWN_TO = 53;
const REST_KEY = { treble: 'b/4', bass: 'd/3' } as const;

/** What one hand does from one moment to another: strikes a step's notes, or rests. */
interface Span {
  readonly from: number;
  readonly to: number;
  readonly step: ExpectedStep | null;
}

/** Whatever is to be played → its bars. `hands`: whose staves there are, whatever is written; null: only those with notes. */
export function barsOf(
  exercise: Exercise,
  meant: Meant | null = null,
  hands: readonly Hand[] | null = null,
): readonly Bar[] {
  const { passage } = exercise.choice;
  return passage === undefined ? writeBars(exercise, meant) : writtenBars(exercise, passage, meant, hands);
}

function writtenBars(
  exercise: Exercise,
  passage: OwnPassage,
  meant: Meant | null,
  staves: readonly Hand[] | null,
): readonly Bar[] {
  const { steps, practised } = exercise;
  const isWhole = practised === undefined || practised.repeats === 0;
  const offset = isWhole ? firstBeat(passage, exercise.choice.hands) : 0;
  const lines = isWhole ? barlines(passage) : linesOver(steps, passage);
  const hands = (['right', 'left'] as const).filter(
    (hand) => staves?.includes(hand) ?? steps.some((step) => notesOf(step, hand).length > 0),
  );
  const signs = signsOf(exercise, meant);
  const spans = hands.map((hand) => spansOf(steps, hand, offset, lines.at(-1)!, isWhole));
  return lines.slice(1).map((end, index): Bar => {
    const start = lines[index]!;
    const bar = passage.bars[isWhole ? index : 0]!;
    const before = isWhole ? passage.bars[index - 1] : undefined;
    const isNew =
      index === 0 || (before !== undefined && (before.count !== bar.count || before.unit !== bar.unit));
    const beamBeats = bar.unit === 8 && bar.count % 3 === 0 ? 1.5 : 1;
    const parts = hands.map((hand, row): StaffPart => {
      const inBar = spans[row]!.filter(({ from, to }) => from < end - NEAR && to > start + NEAR);
      const clef = clefOf(hand, inBar);
      const events = inBar.flatMap((span) =>
        eventsOf(span, { start, end, hand, clef, beamBeats, all: inBar }),
      );
      return {
        hand,
        clef,
        events: events.map((event) => ({
          ...event,
          signs: event.rest || event.tie === 'from' ? [] : (signs.get(event.step) ?? []),
        })),
      };
    });
    return {
      index,
      last: index === lines.length - 2,
      beats: { from: start, to: end },
      parts,
      ...(isNew && { time: `${bar.count}/${bar.unit}` }),
    };
  });
}

const notesOf = ({ notes }: ExpectedStep, hand: Hand): readonly ExpectedNote[] =>
  notes.filter((note) => note.hand === hand || (hand === 'left' && note.leftFinger !== undefined));

const firstBeat = ({ notes }: OwnPassage, hands: Exercise['choice']['hands']): number =>
  Math.min(...notes.flatMap(({ hand, beat }) => (hands === 'together' || hand === hands ? [beat] : [])));

/** Bars of one length over what is practised, whose stops no metre has. */
function linesOver(steps: readonly ExpectedStep[], { bars }: OwnPassage): readonly number[] {
  const length = (4 * bars[0]!.count) / bars[0]!.unit;
  const count = Math.max(1, Math.ceil((steps.at(-1)!.beat + NEAR) / length));
  return Array.from({ length: count + 1 }, (_, at) => at * length);
}

function spansOf(
  steps: readonly ExpectedStep[],
  hand: Hand,
  offset: number,
  end: number,
  isWhole: boolean,
): readonly Span[] {
  const own = steps.filter((step) => notesOf(step, hand).length > 0);
  const spans: Span[] = [];
  let at = 0;
  own.forEach((step, index) => {
    const from = offset + step.beat;
    const next = own[index + 1] === undefined ? end : offset + own[index + 1]!.beat;
    const written = Math.max(...notesOf(step, hand).map(({ beats = 1 }) => beats));
    if (from - at > NEAR) spans.push({ from: at, to: from, step: null });
    at = isWhole ? Math.min(next, end, from + written) : next;
    spans.push({ from, to: at, step });
  });
  if (end - at > NEAR) spans.push({ from: at, to: end, step: null });
  return spans;
}

function clefOf(hand: Hand, spans: readonly Span[]): Clef {
  const midis = spans.flatMap(({ step }) =>
    step === null ? [] : notesOf(step, hand).map(({ midi }) => midi),
  );
  if (hand === 'right')
    return Math.min(Infinity, ...midis) < TREBLE_DOWN_TO && Math.max(...midis) <= BASS_UP_TO
      ? 'bass'
      : 'treble';
  return Math.max(-Infinity, ...midis) > BASS_UP_TO && Math.min(...midis) >= TREBLE_DOWN_TO
    ? 'treble'
    : 'bass';
}

interface InBar {
  readonly start: number;
  readonly end: number;
  readonly hand: Hand;
  readonly clef: Clef;
  readonly beamBeats: number;
  readonly all: readonly Span[];
}

/** A span, as far as it lies in a bar → its notes tied together, or rests. */
function eventsOf(span: Span, inBar: InBar): readonly StaffEvent[] {
  const { start, end, hand, clef, beamBeats, all } = inBar;
  const { step } = span;
  const notes = step === null ? [] : notesOf(step, hand);
  const pieces =
    step === null && span.from <= start + NEAR && span.to >= end - NEAR
      ? [{ at: 0, duration: 'w' as const, dots: 0 as const }]
      : piecesOf(Math.max(span.from, start) - start, Math.min(span.to, end) - start, (beat) =>
          isTriplet(beat, start, all),
        );
  return pieces.map((piece, at): StaffEvent => {
    const goesOn = at < pieces.length - 1 || span.to > end + NEAR;
    const cameOver = at > 0 || span.from < start - NEAR;
    const tie = goesOn ? (cameOver ? 'through' : 'on') : cameOver ? 'from' : null;
    const isBeamed = ['8', '16', '32'].includes(piece.duration) && step !== null;
    return {
      step: step?.step ?? -1,
      clef,
      keys: step === null ? [REST_KEY[clef]] : notes.map(({ name }) => vexKey(name, 0)),
      fingers: cameOver ? [] : notes.flatMap(({ finger }) => finger ?? []),
      duration: piece.duration,
      dots: piece.dots,
      octavesUp: 0,
      beat: piece.at,
      signs: [],
      ...(step === null ? { rest: true as const } : tie !== null && { tie }),
      ...(piece.triplet !== undefined && { triplet: piece.triplet }),
      ...(isBeamed && { beam: Math.floor((piece.at + NEAR) / beamBeats) }),
    };
  });
}

type Piece = Pick<StaffEvent, 'duration' | 'dots' | 'triplet'> & { readonly at: number };

/** Whether something of a beat lies on thirds of it. */
function isTriplet(beat: number, start: number, spans: readonly Span[]): boolean {
  return spans
    .flatMap(({ from, to }) => [from - start, to - start])
    .filter((at) => at > beat + NEAR && at < beat + 1 - NEAR)
    .some((at) => Math.abs(16 * at - Math.round(16 * at)) > 16 * NEAR);
}

/** From one moment in a bar to another → lengths that can be written, one after the other. */
function piecesOf(from: number, to: number, isInTriplet: (beat: number) => boolean): readonly Piece[] {
  const pieces: Piece[] = [];
  let at = from;
  while (to - at > NEAR) {
    const beat = Math.floor(at + NEAR);
    const left = to - at;
    if (isInTriplet(beat)) {
      const room = Math.min(left, beat + 1 - at);
      const value = nearestValue(TRIPLET * room);
      pieces.push({ at, duration: value.duration, dots: value.dots, triplet: beat });
      at += room;
      continue;
    }
    const toNext = beat + 1 - at;
    const over =
      OVER_THE_BEAT.some((length) => Math.abs(length - left) < NEAR) &&
      Math.abs(2 * at - Math.round(2 * at)) < NEAR;
    const onBeat = Math.abs(at - beat) < NEAR;
    const room = onBeat || over ? untilTriplet(at, left, isInTriplet) : Math.min(left, toNext);
    const value = VALUES.find(({ beats }) => beats <= room + NEAR) ?? SHORTEST;
    pieces.push({ at, duration: value.duration, dots: value.dots });
    at += Math.max(value.beats, SHORTEST.beats);
  }
  return pieces;
}

function untilTriplet(at: number, left: number, isInTriplet: (beat: number) => boolean): number {
  for (let beat = Math.floor(at + NEAR) + 1; beat < at + left - NEAR; beat++)
    if (isInTriplet(beat)) return beat - at;
  return left;
}

const nearestValue = (beats: number): (typeof VALUES)[number] =>
  VALUES.reduce<(typeof VALUES)[number]>(
    (a, b) => (Math.abs(b.beats - beats) < Math.abs(a.beats - beats) ? b : a),
    VALUES[0],
  );
