import type { Hand } from '../../../engine/index.ts';
import { strings } from '../../language/index.ts';
import { shownName, shownWrongName } from '../../names/index.ts';
import { widthPx } from './labels.ts';
import { sounded, type Pearl } from './pearls.ts';
import type { Spot } from './spots.ts';
import type { DrawnPearl, DrawnText, LabelWays, Tone } from './types.ts';

/** Where one hand's string lies in a row and how much room it needs. All px. */
export interface Lane {
  readonly hand: Hand;
  readonly y: number;
  /** names above (−1) or below (+1) the string */
  readonly side: -1 | 1;
  /** half the height of the tallest chord in the row */
  readonly half: number;
  /** arches rise (−1) or, under the lower of two strings, hang (+1) */
  readonly archSide: -1 | 1;
  /** how far arches push the names away from the string */
  readonly archPx: number;
}

export const LANE = {
  /** radius of a pearl of mean loudness, and what one dB adds: ± 4 dB fill the range */
  meanRadius: 11,
  radiusPerDb: 1.5,
  smallest: 5,
  largest: 17,
  chordRadius: 9,
  chordSpacing: 19,
  archHeight: 58,
  /** arches on the side of the names need this much room */
  archRoom: 46,
  hang: 46,
  nameSize: 19,
  fingerSize: 15,
  wordSize: 14,
} as const;

/** Level against the hand's mean → radius. A single note may grow further than one of a chord. */
export function pearlRadius(levelDb: number, meanDb: number, inChord: boolean): number {
  const middle = inChord ? LANE.chordRadius * 0.8 : LANE.meanRadius;
  const grown = middle + (levelDb - meanDb) * LANE.radiusPerDb * (inChord ? 0.5 : 1);
  return Math.min(Math.max(grown, LANE.smallest), inChord ? LANE.chordRadius : LANE.largest);
}

/** Pearls of one spot → where they are drawn. A chord stands across its string; a wrong note hangs below it. */
export function placePearls(
  spot: Spot,
  lane: Lane,
  xOf: (timeSec: number) => number,
  meanDb: number,
): readonly DrawnPearl[] {
  const inChord = spot.pearls.length > 1;
  const middle = (spot.pearls.length - 1) / 2;
  let hanging = 0;
  return spot.pearls.map((pearl, place) => {
    const x = xOf(pearl.timeSec);
    const stringY = lane.y + (middle - place) * LANE.chordSpacing;
    if (pearl.kind === 'extra') return { pearl, x, y: lane.y, radius: 6, tiedAtY: null };
    if (pearl.kind === 'missed' || pearl.kind === 'unsure')
      return { pearl, x, y: stringY, radius: inChord ? LANE.chordRadius : 12, tiedAtY: null };
    const radius = pearlRadius(pearl.levelDb, meanDb, inChord);
    if (pearl.kind === 'struck') return { pearl, x, y: stringY, radius, tiedAtY: null };
    hanging += 1;
    const below = inChord ? lane.half + 14 : LANE.hang - LANE.chordSpacing;
    return { pearl, x, y: lane.y + below + hanging * LANE.chordSpacing, radius, tiedAtY: stringY };
  });
}

/** How far a spot reaches below its string when a note of it hangs. */
export function hangingDepth(spot: Spot, half: number): number {
  const wrong = spot.pearls.filter((pearl) => pearl.kind === 'wrong').length;
  if (wrong === 0) return 0;
  return spot.pearls.length > 1 ? half + 14 + wrong * LANE.chordSpacing + 12 : LANE.hang + 50;
}

const text = (
  words: string,
  x: number,
  y: number,
  look: Partial<Pick<DrawnText, 'sizePx' | 'tone' | 'serif' | 'anchor'>>,
): DrawnText => ({
  text: words,
  x,
  y,
  sizePx: look.sizePx ?? LANE.nameSize,
  tone: look.tone ?? 'ink',
  serif: look.serif ?? true,
  anchor: look.anchor ?? 'middle',
});

export { text as drawnText };

const small = { sizePx: LANE.fingerSize, tone: 'soft', serif: false } as const;
const word = { sizePx: LANE.wordSize, tone: 'accent', serif: false } as const;

/** How far a label gives way to its neighbour, px. */
const LINE_PX = 16;

/**
 * Names, fingers and the words for what went otherwise: each label in the ways that it can be drawn, the best first. `roomPx`: how wide
 * the words of a chord may be without lying over those of the chords beside it.
 */
export function labelSpot(
  spot: Spot,
  drawn: readonly DrawnPearl[],
  lane: Lane,
  roomPx = Infinity,
): readonly LabelWays[] {
  const first = drawn[0]!;
  const only = first.pearl;
  if (only.kind === 'extra') return [extraLabel(only, first, lane)];
  if (spot.pearls.length > 1) return chordLabels(drawn, lane, roomPx).map((label) => [label]);
  const nameY = lane.y + (lane.side > 0 ? 50 : -28) + lane.side * lane.archPx;
  const nextY = nameY + lane.side * 23;
  const x = first.x;
  if (only.kind === 'wrong') {
    const wanted = text(strings().pearls.label.wanted(shownName(only.wantedName)), x, first.y + 49, word);
    return [
      [text(shownWrongName(only.name, only.wantedName), x, first.y + 31, { tone: 'accent' })],
      [wanted, { ...wanted, y: wanted.y + LINE_PX }],
    ];
  }
  const silent = !sounded(only);
  const tone: Tone = only.kind === 'missed' ? 'accent' : 'ink';
  const under =
    only.kind === 'missed'
      ? text(strings().pearls.label.missed, x, nextY, word)
      : only.kind === 'unsure'
        ? text(strings().pearls.label.unsure, x, nextY, { ...word, tone: 'soft' })
        : text(only.finger === null ? '' : String(only.finger), x, nextY, small);
  const doubt: LabelWays[] = only.kind === 'unsure' ? [[text('?', x, lane.y + 5, small)]] : [];
  // The ring and the colour say it too: where two stand side by side, the word of one is enough.
  const name = text(shownName(only.name), x, nameY, { tone: silent ? tone : 'ink' });
  return [[name], silent ? [under, { ...under, text: '' }] : [under], ...doubt];
}

function extraLabel(pearl: Pearl & { kind: 'extra' }, drawn: DrawnPearl, lane: Lane): LabelWays {
  const name = shownName(pearl.name);
  const clear = lane.side > 0 ? lane.half + 12 : lane.half + 60 + lane.archPx;
  const short = text(name, drawn.x, lane.y - clear, word);
  const words = `${name} ${strings().pearls.label.extra[pearl.extraKind]}`.trim();
  return [{ ...short, text: words }, short, { ...short, y: short.y - LINE_PX }];
}

function chordLabels(drawn: readonly DrawnPearl[], lane: Lane, roomPx: number): readonly DrawnText[] {
  const topDown = [...drawn].reverse();
  const x = topDown.reduce((sum, { x: at }) => sum + at, 0) / topDown.length;
  const deepest = Math.max(...drawn.map((one) => (one.tiedAtY === null ? 0 : one.y + 12 - lane.y)));
  const startY =
    lane.side > 0
      ? lane.y + Math.max(lane.half + 36, deepest + 22)
      : lane.y - lane.half - 16 - (topDown.length - 1) * 21;
  const t = strings().pearls.label;
  const words = { ...word, sizePx: 16 };
  /** the first of these that has room; the accent alone says that something is otherwise */
  const fitting = (ways: readonly string[], y: number): DrawnText =>
    text(ways.find((way) => widthPx({ text: way, sizePx: 16 }) <= roomPx) ?? ways.at(-1)!, x, y, words);
  return topDown.flatMap(({ pearl }, line) => {
    const y = startY + line * 21;
    switch (pearl.kind) {
      case 'wrong': {
        const struck = shownWrongName(pearl.name, pearl.wantedName);
        const wanted = shownName(pearl.wantedName);
        return [fitting([t.struckFor(struck, wanted), `${struck}, ${t.wanted(wanted)}`, struck], y)];
      }
      case 'missed':
        return [fitting([t.noteMissed(shownName(pearl.name)), shownName(pearl.name)], y)];
      case 'unsure':
        return [text(`${shownName(pearl.name)} ?`, x, y, { ...small, sizePx: 16 })];
      default:
        return [
          text(shownName(pearl.name), x - 2, y, { sizePx: 17, anchor: 'end' }),
          text(String(pearl.finger ?? ''), x + 6, y, { ...small, anchor: 'start' }),
        ];
    }
  });
}
