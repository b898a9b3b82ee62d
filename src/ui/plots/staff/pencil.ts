import type { Hand } from '../../../engine/index.ts';

/** Something to be written into the notes. */
export interface StaffMark {
  readonly step: number;
  readonly hand: Hand;
  readonly kind: 'missed' | 'wrong' | 'unsure' | 'extra' | 'late' | 'apart' | 'spread';
  /** which note of the chord, from the lowest; null: the whole place */
  readonly note: number | null;
  /** what stands beside it, e.g. "E♮" or "+92 ms" */
  readonly text: string;
  /** of hands that fall apart: the one that came first */
  readonly first?: Hand;
}

/** Where a note or chord was engraved, px at scale 1. */
export interface StaffPlace {
  readonly step: number;
  readonly hand: Hand;
  /** middle of the heads */
  readonly x: number;
  /** middles of the heads, from the lowest key up */
  readonly headsY: readonly number[];
  /** of all its ink, fingers included */
  readonly topY: number;
  readonly bottomY: number;
}

/** Marks as shapes that read in black and white, px at scale 1. */
export interface Pencilled {
  readonly rings: readonly {
    readonly x: number;
    readonly y: number;
    readonly r: number;
    readonly broken: boolean;
  }[];
  readonly paths: readonly string[];
  readonly texts: readonly {
    readonly x: number;
    readonly y: number;
    readonly text: string;
    readonly anchor: 'start' | 'middle' | 'end';
  }[];
}

/** Words keep this far from each other upwards, px; a letter is about so wide. */
const LINE_PX = 14;
const LETTER_PX = 6.6;
const RING_PX = 9;

/** Marks and places of one system → shapes. Words of the right hand stand above its notes, of the left below. */
export function pencil(marks: readonly StaffMark[], places: readonly StaffPlace[]): Pencilled {
  const at = (step: number, hand: Hand): StaffPlace | undefined =>
    places.find((place) => place.step === step && place.hand === hand);
  const rings: Pencilled['rings'][number][] = [];
  const paths: string[] = [];
  const texts: Pencilled['texts'][number][] = [];
  const words = wordLines(places);
  for (const mark of marks) {
    const place = at(mark.step, mark.hand);
    if (place === undefined) continue;
    const { x, headsY } = place;
    const y = headsY[mark.note ?? 0] ?? headsY[0]!;
    switch (mark.kind) {
      case 'missed':
      case 'unsure':
        rings.push({ x, y, r: RING_PX, broken: true });
        break;
      case 'wrong':
        paths.push(`M${x - 11} ${y + 8}L${x + 11} ${y - 8}`);
        break;
      case 'extra':
        rings.push({ x: x + 17, y, r: 4, broken: false });
        break;
      case 'late': {
        const from = at(mark.step - 1, mark.hand) ?? { x: x - 30 };
        const up = mark.hand === 'right' ? -1 : 1;
        const foot = up < 0 ? place.topY - 1 : place.bottomY + 1;
        paths.push(`M${from.x} ${foot} Q${(from.x + x) / 2} ${foot + up * 14} ${x} ${foot}`);
        break;
      }
      case 'apart': {
        const other = at(mark.step, mark.hand === 'right' ? 'left' : 'right');
        if (other === undefined) continue;
        const slant = mark.first === 'left' ? -5 : 5;
        const [top, bottom] = [place.bottomY + 5, Math.max(other.topY - 5, place.bottomY + 13)];
        paths.push(`M${x - slant} ${top}L${x + slant} ${bottom}`);
        texts.push({ x: x + 8, y: (top + bottom) / 2 + 5, text: mark.text, anchor: 'start' });
        continue;
      }
      case 'spread':
        paths.push(wave(x - 15, Math.max(...headsY) + 6, Math.min(...headsY) - 6));
        break;
    }
    if (mark.text !== '') texts.push(words(mark, place));
  }
  return { rings, paths, texts };
}

/** A wavy line upwards, as beside a chord that is not struck at once. */
function wave(x: number, fromY: number, toY: number): string {
  const waves = Math.max(2, Math.round((fromY - toY) / 8));
  const each = (fromY - toY) / waves;
  return `M${x} ${fromY}` + `q-4 ${-each / 4} 0 ${-each / 2}q4 ${-each / 4} 0 ${-each / 2}`.repeat(waves);
}

/** Gives each word its place: as near its note as the ink beside it and other words allow. */
function wordLines(places: readonly StaffPlace[]) {
  const taken: { hand: Hand; y: number; from: number; to: number }[] = [];
  return (mark: StaffMark, place: StaffPlace): Pencilled['texts'][number] => {
    const half = (mark.text.length * LETTER_PX) / 2;
    const [from, to] = [place.x - half - 3, place.x + half + 3];
    const near = places.filter(({ hand, x }) => hand === mark.hand && x > from - 8 && x < to + 8);
    const above = mark.hand === 'right';
    // A bow needs its own room.
    const bowPx = mark.kind === 'late' ? 8 : 0;
    let y = above
      ? Math.min(...near.map(({ topY }) => topY)) - 5 - bowPx
      : Math.max(...near.map(({ bottomY }) => bottomY)) + 15 + bowPx;
    const runsInto = (): boolean =>
      taken.some(
        (one) => one.hand === mark.hand && Math.abs(one.y - y) < LINE_PX && one.from < to && one.to > from,
      );
    while (runsInto()) y += above ? -LINE_PX : LINE_PX;
    taken.push({ hand: mark.hand, y, from, to });
    return { x: place.x, y, text: mark.text, anchor: 'middle' };
  };
}
