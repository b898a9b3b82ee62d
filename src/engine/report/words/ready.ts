import type { Hand } from '../../exercise/index.ts';
import type { Scene } from './scene.ts';
import { atCriterion, type Figures } from './standing.ts';

/** Whether something is ready, by the reports at hand: as many in a row, on as many days, as the criteria ask for. */

/** Those of these reports, counted from the last, that are at the criterion without a break. */
export function rowAtCriterion(line: readonly Figures[], scene: Scene): readonly Figures[] {
  const { criteria, report } = scene;
  const leastBpm = criteria.leastBpm ?? report.targetBpm;
  const first = line.findLastIndex((one) => !atCriterion(one, criteria, leastBpm));
  return line.slice(first + 1);
}

/** This attempt and those before it that are at the criterion without a break. */
export function rowNow(scene: Scene): readonly Figures[] {
  return rowAtCriterion([...scene.earlier, scene.report], scene);
}

export function isReady(row: readonly Figures[], { criteria, daysBefore }: Scene): boolean {
  const days = new Set(row.map((one) => daysBefore.get(one) ?? 0));
  return row.length >= criteria.readyInARow && days.size >= criteria.readyDays;
}

/** Whether one hand alone is ready, or was, as far as its reports go back. */
export function handIsReady(hand: Hand, scene: Scene): boolean {
  const line = scene.alone[hand];
  return line.some((_, last) => isReady(rowAtCriterion(line.slice(0, last + 1), scene), scene));
}
