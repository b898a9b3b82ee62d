import { playedBy, type Exercise, type Hand, type WrittenFinger } from '../../engine/index.ts';

/** One note with the finger that plays it. */
export interface FingerPlace extends Omit<WrittenFinger, 'finger'> {
  readonly name: string;
  /** null: left open */
  readonly finger: number | null;
  /** the hand crosses on the way into it */
  readonly crosses: boolean;
}

/** What a hand plays one way, or the whole where it does not turn. */
export interface FingerRow {
  readonly hand: Hand;
  readonly way: 'up' | 'down' | 'all';
  readonly places: readonly FingerPlace[];
}

/** An exercise → its notes hand by hand and way by way, right hand first, the turn on the way up. */
export function fingerRows({ steps }: Exercise): readonly FingerRow[] {
  const turn = steps.find((step) => step.turn)?.step;
  return (['right', 'left'] as const).flatMap((hand): readonly FingerRow[] => {
    const places = steps.flatMap(({ step, notes, crossings }) =>
      notes
        .flatMap((note) => playedBy(hand, note))
        .map(({ name, finger }, fromBottom) => ({
          ...{ hand, step, fromBottom, name, finger },
          crosses: crossings.some((one) => one.hand === hand),
        })),
    );
    if (places.length === 0) return [];
    if (turn === undefined) return [{ hand, way: 'all', places }];
    return [
      { hand, way: 'up', places: places.filter(({ step }) => step <= turn) },
      { hand, way: 'down', places: places.filter(({ step }) => step > turn) },
    ];
  });
}

/** Whether somebody has written the finger of this note. */
export function isWritten(written: readonly WrittenFinger[], place: FingerPlace): boolean {
  return written.some(
    ({ hand, step, fromBottom }) =>
      hand === place.hand && step === place.step && fromBottom === place.fromBottom,
  );
}
