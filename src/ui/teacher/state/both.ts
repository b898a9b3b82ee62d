import { exerciseId } from '../../../engine/index.ts';
import type { Assigned } from '../../../io/review/index.ts';

/** A text typed over `before`, where it is `now` what another window may have made of it → what is kept: both, if both wrote. */
export function bothOf(now: string, before: string, typed: string): string {
  if (now === before || now === typed || now.trim() === '') return typed;
  return typed.trim() === '' ? now : `${now}\n\n${typed}`;
}

const same = (a: Assigned, b: Assigned): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Where in a list something stands that was shown as `item`: as it is, else with fields that another window changed; −1: gone. */
function placeOf(now: readonly Assigned[], item: Assigned): number {
  const exact = now.findIndex((one) => same(one, item));
  const id = exerciseId(item.exercise);
  return exact >= 0 ? exact : now.findIndex(({ exercise }) => exerciseId(exercise) === id);
}

/** What is assigned, with some fields of one item changed; what was taken away elsewhere and is changed here comes back. */
export function withChanged(
  now: readonly Assigned[],
  item: Assigned,
  fields: Partial<Assigned>,
): readonly Assigned[] {
  const at = placeOf(now, item);
  return at < 0 ? [...now, { ...item, ...fields }] : now.with(at, { ...now[at]!, ...fields });
}

/** … with one item moved earlier (−1) or later (1). */
export function withMoved(now: readonly Assigned[], item: Assigned, by: 1 | -1): readonly Assigned[] {
  const at = placeOf(now, item);
  const to = at + by;
  return at < 0 || to < 0 || to >= now.length ? now : now.toSpliced(at, 1).toSpliced(to, 0, now[at]!);
}

/** … with one item taken away; where another window has changed it, it stays. */
export function without(now: readonly Assigned[], item: Assigned): readonly Assigned[] {
  const at = now.findIndex((one) => same(one, item));
  return at < 0 ? now : now.toSpliced(at, 1);
}
