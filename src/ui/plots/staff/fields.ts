import type { Hand } from '../../../engine/index.ts';
import type { Bar, Clef } from './bars.ts';
import type { DrawnPart } from './notes.ts';

/** A bar of one hand's staff as it was engraved, px at scale 1: where on it is when, and how high. */
export interface StaffField {
  readonly hand: Hand;
  readonly clef: Clef;
  readonly fromX: number;
  readonly toX: number;
  /** the highest of its five lines */
  readonly topLineY: number;
  /** what stands in it, from its beginning to its end: quarter notes, and px */
  readonly anchors: readonly { readonly beat: number; readonly x: number }[];
}

/** A place on a staff that was touched. */
export interface StaffPoint {
  readonly hand: Hand;
  /** quarter notes from the beginning of the first bar, between those of the notes around it */
  readonly beat: number;
  /** line or space, by letters from C0 on */
  readonly place: number;
}

/** From one line to the next, px. */
const LINE_PX = 10;
const LINES = 5;
/** What the highest line is called, by letters from C0 on: F5, A3. */
const TOP_PLACE: Readonly<Record<Clef, number>> = { treble: 38, bass: 26 };
const HALF_HEAD_PX = 6;

export function fieldsOf({ beats }: Bar, parts: readonly DrawnPart[]): readonly StaffField[] {
  if (beats === undefined) return [];
  return parts.map(({ part, stave, notes }): StaffField => {
    // A rest that fills its bar stands in the middle of it, whenever it begins.
    const events = part.events.length === 1 && part.events[0]!.rest === true ? [] : part.events;
    const written = events.map((event, at) => ({
      beat: beats.from + event.beat,
      x: notes[at]!.getAbsoluteX() + HALF_HEAD_PX,
    }));
    const begins = { beat: beats.from, x: stave.getNoteStartX() + HALF_HEAD_PX };
    const head = written[0] !== undefined && written[0].beat <= beats.from ? [] : [begins];
    return {
      hand: part.hand,
      clef: part.clef,
      fromX: stave.getX(),
      toX: stave.getX() + stave.getWidth(),
      topLineY: stave.getYForLine(0),
      anchors: [...head, ...written, { beat: beats.to, x: stave.getNoteEndX() }],
    };
  });
}

/** A point in a system → what it means there; null: it lies beside the staves. */
export function pointAt(fields: readonly StaffField[], x: number, y: number): StaffPoint | null {
  const [field] = fields
    .filter(({ fromX, toX }) => x >= fromX && x < toX)
    .sort((a, b) => awayFrom(a, y) - awayFrom(b, y));
  if (field === undefined) return null;
  const { hand, clef, anchors, topLineY } = field;
  const next = Math.max(
    1,
    anchors.findIndex((anchor) => anchor.x > x),
  );
  const [before, then] = [anchors[next - 1]!, anchors[next] ?? anchors.at(-1)!];
  const share = then.x > before.x ? Math.min(1, Math.max(0, (x - before.x) / (then.x - before.x))) : 0;
  return {
    hand,
    beat: before.beat + share * (then.beat - before.beat),
    place: TOP_PLACE[clef] - Math.round((2 * (y - topLineY)) / LINE_PX),
  };
}

function awayFrom({ topLineY }: StaffField, y: number): number {
  return Math.max(0, topLineY - y, y - topLineY - (LINES - 1) * LINE_PX);
}
