import { nameAt, type WrittenNote } from '../../engine/index.ts';
import type { DrawnSystem } from '../plots/staff/draw.ts';
import { pointAt } from '../plots/staff/fields.ts';
import { momentsOn, NEAR, type Sheet } from './sheet.ts';

/** A note's head as it was engraved, px at scale 1. */
export interface Head {
  readonly note: WrittenNote;
  readonly x: number;
  readonly y: number;
}

/** The heads of one system, each with its note. */
export function headsIn({ places }: Pick<DrawnSystem, 'places'>, sheet: Sheet): readonly Head[] {
  const moments = momentsOn(sheet);
  return places.flatMap(({ step, hand, x, headsY }) => {
    const own = moments[step]?.notes.filter((note) => note.hand === hand) ?? [];
    return own.map((note, at) => ({ note, x, y: headsY[at] ?? headsY[0]! }));
  });
}

/** A finger is so wide, px. */
const FINGER_PX = 44;
/** What is touched on its head is that note, also where a touch writes. */
const HEAD_PX = 9;
/** So near to a note's column something new sounds with it. */
const COLUMN_PX = 13;

/** The note nearest to a touch; null: none is near. */
export function nearestHead(
  heads: readonly Head[],
  x: number,
  y: number,
  withinPx = FINGER_PX,
): WrittenNote | null {
  const away = (head: Head): number => Math.hypot(head.x - x, head.y - y);
  const [nearest] = [...heads].sort((a, b) => away(a) - away(b));
  return nearest !== undefined && away(nearest) <= withinPx ? nearest.note : null;
}

/** What a touch means where it writes: a note that is there, or one to be put there as long as `beats`; null: beside the staves. */
export function touchedAt(
  system: DrawnSystem,
  sheet: Sheet,
  { x, y, beats }: { readonly x: number; readonly y: number; readonly beats: number },
): { readonly there: WrittenNote } | { readonly put: Omit<WrittenNote, 'beats'> } | null {
  const heads = headsIn(system, sheet);
  const there = nearestHead(heads, x, y, HEAD_PX);
  if (there !== null) return { there };
  const point = pointAt(system.fields, x, y);
  if (point === null) return null;
  const column = [...heads]
    .filter((head) => Math.abs(head.x - x) <= COLUMN_PX)
    .sort((a, b) => Math.abs(a.x - x) - Math.abs(b.x - x))[0];
  // A line of rests has no columns: there it is the nearest place that the note's own length divides the bar into.
  const grid = Math.min(beats, 1);
  const beat = column?.note.beat ?? Math.floor((point.beat + NEAR) / grid + 0.5) * grid;
  return { put: { name: nameAt(sheet.key, point.place), hand: point.hand, beat: Math.max(0, beat) } };
}
