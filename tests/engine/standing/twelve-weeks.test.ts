import { describe, expect, it } from 'vitest';
import {
  SET,
  ALL_KEYS,
  DEFAULT_CRITERIA,
  exerciseId,
  type PlanReason,
  type Practised,
} from '../../../src/engine/index.ts';
import { createRandom } from '../../support/random.ts';
import { DAY_MS, NOW_MS, summary, standings, today } from './history.ts';

const DAYS = 84;
const ATTEMPTS_AN_ITEM = 3;

interface Student {
  readonly minutes: number;
  /** how likely an attempt at a new exercise goes well, and by how much each attempt adds to it */
  readonly atFirst: number;
  readonly gain: number;
  readonly daysAWeek: number;
}

/** Plays what the plan of each day says, for twelve weeks; what was learnt is not forgotten. */
function practise({ minutes, atFirst, gain, daysAWeek }: Student, seed: number) {
  const random = createRandom(seed);
  const history: Practised[] = [];
  const attempts = new Map<string, number>();
  const reasons = new Map<PlanReason['kind'], number>();
  let daysWithoutPlan = 0;
  for (let day = 0; day < DAYS; day += 1) {
    if (day % 7 >= daysAWeek) continue;
    const nowMs = NOW_MS + day * DAY_MS;
    const plan = today(minutes, history, nowMs, DEFAULT_CRITERIA);
    if (plan.length === 0) daysWithoutPlan += 1;
    for (const [place, { exercise, targetBpm, reason }] of plan.entries()) {
      reasons.set(reason.kind, (reasons.get(reason.kind) ?? 0) + 1);
      for (let attempt = 0; attempt < ATTEMPTS_AN_ITEM; attempt += 1) {
        const id = exerciseId(exercise);
        const before = attempts.get(id) ?? 0;
        attempts.set(id, before + 1);
        const well = random.chance(Math.min(0.97, atFirst + gain * before));
        history.push({
          whenMs: nowMs + (place * 10 + attempt) * 60_000,
          summary: summary(exercise, { targetBpm, tempoBpm: targetBpm ?? 70, wrong: well ? 0 : 2 }),
        });
      }
    }
  }
  return { history, reasons, daysWithoutPlan, endMs: NOW_MS + DAYS * DAY_MS };
}

/** Invented students; the rules they are held to: src/engine/standing/README.md. */
describe('twelve weeks by the plan of each day', () => {
  it.each<[string, Student]>([
    ['an hour a day, quick to learn', { minutes: 60, atFirst: 0.8, gain: 0.1, daysAWeek: 7 }],
    ['an hour, five days a week', { minutes: 60, atFirst: 0.7, gain: 0.1, daysAWeek: 5 }],
    ['half an hour a day', { minutes: 30, atFirst: 0.8, gain: 0.1, daysAWeek: 7 }],
  ])('%s: a plan for every day, all keys and forms begun, and nothing forgotten', (_name, student) => {
    const { history, reasons, daysWithoutPlan, endMs } = practise(student, 7);
    expect(daysWithoutPlan).toBe(0);
    expect(reasons.get('long-ago') ?? 0).toBeGreaterThan(0);
    const played = [...standings(history, DEFAULT_CRITERIA).values()];
    const keys = new Set(played.map(({ exercise }) => exercise.key));
    expect(ALL_KEYS.filter((key) => !keys.has(key))).toEqual([]);
    const forms = new Set(played.map(({ exercise }) => exercise.form));
    expect(SET.filter((form) => !forms.has(form))).toEqual([]);
    // Left alone, everything is due again within eight weeks.
    const later = today(100_000, history, endMs + 57 * DAY_MS, DEFAULT_CRITERIA);
    const due = new Set(
      later.filter(({ reason }) => reason.kind === 'long-ago').map(({ exercise }) => exerciseId(exercise)),
    );
    const lost = played.filter(({ exercise, level }) => level === 'ready' && !due.has(exerciseId(exercise)));
    expect(lost).toEqual([]);
  });

  it('fifteen minutes for a slow beginner: a plan for every day, never too much that is new at once', () => {
    const { daysWithoutPlan, history } = practise(
      { minutes: 15, atFirst: 0.2, gain: 0.02, daysAWeek: 6 },
      11,
    );
    expect(daysWithoutPlan).toBe(0);
    const open = [...standings(history, DEFAULT_CRITERIA).values()].filter(({ level }) => level !== 'ready');
    expect(open.length).toBeLessThanOrEqual(12);
  });
});
