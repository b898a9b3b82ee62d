import type { Exercise, Report } from '../../engine/index.ts';
import { drawPearls } from '../plots/pearls/picture.ts';
import type { PearlPicture } from '../plots/pearls/types.ts';
import { breakSystems } from '../plots/staff/bars.ts';
import { barsOf } from '../plots/staff/written.ts';

/** Mean width of a letter as a share of its size: serif text, measured on DejaVu Serif, the widest of the fonts in use. */
const LETTER_SHARE = 0.56;
const LINE_SHARE = 1.22;

/** A box of text. */
export interface TextBox {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly leastPx: number;
  readonly mostPx: number;
}

/** A text → the largest size at which its lines stand in a box, px; `leastPx` where none does. */
export function textSizePx(text: string, { widthPx, heightPx, leastPx, mostPx }: TextBox): number {
  for (let sizePx = mostPx; sizePx > leastPx; sizePx -= 1)
    if (lines(text, widthPx / (sizePx * LETTER_SHARE)) * sizePx * LINE_SHARE <= heightPx) return sizePx;
  return leastPx;
}

/** Lines that a text takes when broken between words; a word that is too long for a line takes more than there are. */
function lines(text: string, letters: number): number {
  let count = 1;
  let filled = 0;
  for (const word of text.split(' ')) {
    if (word.length > letters) return Infinity;
    if (filled > 0 && filled + 1 + word.length > letters) {
      count += 1;
      filled = word.length;
    } else filled += (filled > 0 ? 1 : 0) + word.length;
  }
  return count;
}

/** How large the report's string may be drawn against its size on the page, largest first. */
const SCALES = [2.4, 2.2, 2, 1.8, 1.6, 1.45, 1.3, 1.15, 1, 0.9, 0.8, 0.7, 0.6] as const;
/** between rows, at scale 1 (as on the page) */
const GAP_PX = 14;

/** The report's string → as large as it stands in a box. It is drawn `1/scale` wide, and to be shown `scale` times larger. */
export function fittedPearls(
  report: Report,
  exercise: Exercise,
  box: { readonly widthPx: number; readonly heightPx: number },
): { readonly picture: PearlPicture; readonly scale: number } {
  const at = (scale: number) => ({
    scale,
    picture: drawPearls(report, exercise, { widthPx: Math.floor(box.widthPx / scale) }),
  });
  const heightPx = ({ rows }: PearlPicture): number =>
    rows.reduce((sum, row) => sum + row.heightPx, 0) + GAP_PX * Math.max(0, rows.length - 1);
  for (const scale of SCALES.slice(0, -1)) {
    const tried = at(scale);
    if (heightPx(tried.picture) * scale <= box.heightPx) return tried;
  }
  return at(SCALES.at(-1)!);
}

/** Height of a line of music with its fingers, for one staff and for two, px at scale 1; measured on the page. */
const SYSTEM_PX = { one: 150, two: 270 } as const;
/** A line that is narrower than this at scale 1 is crowded, px; seen on the page. */
const LINE_PX = 600;
const MUSIC_SCALES = [1.9, 1.75, 1.6, 1.45, 1.3, 1.15, 1, 0.9, 0.8, 0.7, 0.6, 0.5] as const;

/** Of the room for music and string so much is the music's at most; under so many px the string has all of it. */
const BESIDE = { share: 0.55, leastPx: 300 } as const;

/** How large the music stands while the string grows below it; null where there is no room for both. */
export function musicBeside(
  exercise: Exercise,
  signatureCount: number,
  { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number },
): number | null {
  if (heightPx < BESIDE.leastPx) return null;
  return fittingScale(exercise, signatureCount, { widthPx, heightPx: BESIDE.share * heightPx }) ?? null;
}

/** An exercise → how large its music may be shown so that all its lines stand in a box. */
export function musicScale(
  exercise: Exercise,
  signatureCount: number,
  box: { readonly widthPx: number; readonly heightPx: number },
): number {
  return fittingScale(exercise, signatureCount, box) ?? MUSIC_SCALES.at(-1)!;
}

function fittingScale(
  exercise: Exercise,
  signatureCount: number,
  box: { readonly widthPx: number; readonly heightPx: number },
): number | undefined {
  const bars = barsOf(exercise);
  const systemPx = (bars[0]?.parts.length ?? 1) > 1 ? SYSTEM_PX.two : SYSTEM_PX.one;
  const largest = Math.max(1, box.widthPx / LINE_PX);
  const fits = (scale: number): boolean =>
    scale <= largest &&
    breakSystems(bars, box.widthPx / scale, signatureCount).length * systemPx * scale <= box.heightPx;
  return MUSIC_SCALES.find(fits);
}
