import { accentsOf, groupOf } from '../../../engine/index.ts';
import type { Exercise, ExpectedStep, Hand, Intention, Loudness } from '../../../engine/index.ts';
import type { StaffPlace } from './pencil.ts';

/** A sign at one note. */
export type StaffSign = 'staccato' | 'tenuto' | 'accent' | 'fermata' | 'breath';

/** The steps to be practised of what is drawn, and how they are meant. */
export interface Meant {
  readonly fromStep: number;
  readonly toStep: number;
  readonly intention: Intention;
}

/** Signs of each step that has any, as a musician writes them. Common practice, no source. */
export function signsOf({ steps }: Exercise, meant: Meant | null): ReadonlyMap<number, readonly StaffSign[]> {
  if (meant === null) return new Map();
  const { fromStep, toStep, intention } = meant;
  return new Map(
    steps
      .slice(fromStep, toStep + 1)
      .map((step, at) => [step.step, signsAt(step.copy?.place ?? at, steps[step.step + 1], intention)]),
  );
}

function signsAt(
  place: number,
  next: ExpectedStep | undefined,
  { touch, loudness, rhythm }: Intention,
): readonly StaffSign[] {
  const accents = accentsOf(loudness);
  const stops = next?.pauseBefore === true && next.copy?.place !== 0;
  const held = groupOf(rhythm) !== null;
  return [
    ...(touch === 'staccato' ? (['staccato'] as const) : []),
    ...(touch === 'detached' ? (['tenuto'] as const) : []),
    ...(accents !== null && place % accents === 0 ? (['accent'] as const) : []),
    ...(stops ? [held ? ('fermata' as const) : ('breath' as const)] : []),
  ];
}

/** What runs over many notes, as shapes, px at scale 1. */
export interface MeantShapes {
  readonly slurs: readonly string[];
  readonly hairpins: readonly string[];
  readonly letters: readonly { readonly x: number; readonly y: number; readonly text: string }[];
  readonly topY: number;
  readonly bottomY: number;
}

const HAIRPIN_PX = 12;
const GAP_PX = 10;
const LETTER_PX = 16;
const SLUR_PX = 15;
const HEAD_PX = 6;

/** Places of one system → its slurs, hairpins and letters. A slur that goes on in the next system ends open at its edge. */
export function meantShapes(
  places: readonly StaffPlace[],
  { fromStep, toStep, intention }: Meant,
): MeantShapes {
  const slurs: string[] = [];
  const hairpins: string[] = [];
  const letters: MeantShapes['letters'][number][] = [];
  let [topY, bottomY] = [Infinity, -Infinity];
  const { touch, loudness } = intention;
  for (const hand of ['right', 'left'] as const) {
    const own = places.filter(
      (place) => place.hand === hand && place.step >= fromStep && place.step <= toStep,
    );
    const [first, last] = [own[0], own.at(-1)];
    if (first === undefined || last === undefined) continue;
    const above = Math.min(...own.map((place) => place.topY)) - 3;
    const below = Math.max(...own.map((place) => place.bottomY)) + GAP_PX;
    if (touch === 'legato' && first !== last) {
      slurs.push(slur(first.x, last.x, above));
      topY = Math.min(topY, above - SLUR_PX);
    }
    // Of both hands the hairpin stands between them, once.
    const alone = !places.some((place) => place.hand !== hand);
    if ((loudness === 'growing' || loudness === 'fading') && (hand === 'right' || alone)) {
      const share = (step: number): number => (step - fromStep) / Math.max(1, toStep - fromStep);
      const opens = (step: number): number =>
        HAIRPIN_PX * (loudness === 'growing' ? share(step) : 1 - share(step));
      hairpins.push(
        hairpin(
          first.x - HEAD_PX,
          last.x + HEAD_PX,
          below + HAIRPIN_PX / 2,
          opens(first.step),
          opens(last.step),
        ),
      );
      bottomY = Math.max(bottomY, below + HAIRPIN_PX);
    }
    const letter = letterOf(loudness, hand, alone);
    if (letter !== null && first.step === fromStep) {
      letters.push({ x: first.x - HEAD_PX, y: below + LETTER_PX - 4, text: letter });
      bottomY = Math.max(bottomY, below + LETTER_PX);
    }
  }
  return { slurs, hairpins, letters, topY, bottomY };
}

function letterOf(loudness: Loudness | undefined, hand: Hand, alone: boolean): string | null {
  switch (loudness) {
    case 'p':
    case 'mf':
    case 'f':
      return hand === 'right' || alone ? loudness : null;
    case 'left-over-right':
      return hand === 'left' ? 'f' : 'p';
    case 'right-over-left':
      return hand === 'right' ? 'f' : 'p';
    default:
      return null;
  }
}

/** Two bows, the upper a little higher, so that it is thickest in the middle. */
function slur(fromX: number, toX: number, y: number): string {
  const [a, b] = [fromX + (toX - fromX) * 0.2, toX - (toX - fromX) * 0.2];
  const [high, low] = [y - SLUR_PX, y - SLUR_PX + 3];
  return `M${fromX} ${y}C${a} ${high} ${b} ${high} ${toX} ${y}C${b} ${low} ${a} ${low} ${fromX} ${y}Z`;
}

function hairpin(fromX: number, toX: number, y: number, fromPx: number, toPx: number): string {
  return [-1, 1]
    .map((side) => `M${fromX} ${y + (side * fromPx) / 2}L${toX} ${y + (side * toPx) / 2}`)
    .join('');
}
