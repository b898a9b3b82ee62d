import { HIGHEST_KEY, LOWEST_KEY } from '../../base/units.ts';
import type { PlayedNote } from '../../listen/index.ts';
import type { OwnTemplate } from './own.ts';
import { templates } from './templates.ts';
import type { Slid, Template } from './templates.ts';
import { FOLLOWING } from '../costs/index.ts';

/** Fetched once, since every window of every exercise asks for it. */
const { leastShare } = FOLLOWING;

/** An exercise that may be found among some of the notes. */
export interface Listed extends Slid {
  /** first and one past the last of those notes, by index */
  readonly from: number;
  readonly to: number;
  /** 2 · keys in common / (its keys + the window's), the greatest of its windows, 0..1 */
  readonly share: number;
}

/** This many notes share one list of the likeliest exercises. */
const PART = 8;
/** … of so many, which are then followed. */
const FOLLOWED = 24;
/** A window holds this many times the notes of the exercise: extra ones may stand between. */
const WINDOW = 1.15;

/**
 * Notes in order of time → the exercises worth following, and where: for each part of the recording the likeliest, whose keys are
 * best found within as many notes in a row; those of the set, and one's `own` passages. It knows no order; it only counts keys, in windows that move note by note.
 */
export function shortlist(notes: readonly PlayedNote[], own: readonly OwnTemplate[] = []): readonly Listed[] {
  const midis = notes.map(({ midi }) => midi);
  const parts = Array.from({ length: Math.ceil(midis.length / PART) }, () => [] as Listed[]);
  const lowest = Math.min(...midis);
  const highest = Math.max(...midis);
  const counts = new Int32Array(128);
  const left = new Int16Array(128);
  for (const midi of midis) counts[midi]! += 1;
  for (const template of templates()) {
    const first = Math.max(lowest - FOLLOWING.belowHeard, LOWEST_KEY) - template.lowest;
    const last = Math.min(highest - template.lowest, HIGHEST_KEY - template.highest);
    for (let semitones = first; semitones <= last; semitones++) {
      if (!mayBeFound(counts, template, semitones)) continue;
      for (const found of windowsOf(midis, { template, semitones }, left)) enter(parts, found);
    }
  }
  for (const template of own)
    for (const semitones of template.shifts) {
      if (template.lowest + semitones < LOWEST_KEY || template.highest + semitones > HIGHEST_KEY) continue;
      if (!mayBeFound(counts, template, semitones)) continue;
      for (const found of windowsOf(midis, { template, semitones }, left)) enter(parts, found);
    }
  return merged(parts);
}

/**
 * Whether any window can hold enough of the exercise: with s keys of it among all the notes, none has more than s, and at least
 * s notes, so that its share is at most 2 s / (size + s). Most exercises fall out here.
 */
function mayBeFound(counts: Int32Array, { keys, times, size }: Template, semitones: number): boolean {
  let shared = 0;
  for (let at = 0; at < keys.length; at++) shared += Math.min(times[at]!, counts[keys[at]! + semitones]!);
  return (2 * shared) / (size + shared) >= leastShare;
}

/** Stretches in which windows hold enough of the exercise, one entry a part. `left`: room to count each key. */
function windowsOf(
  midis: readonly number[],
  { template, semitones }: Slid,
  left: Int16Array,
): readonly Listed[] {
  const { keys, times } = template;
  const length = Math.round(WINDOW * template.size);
  left.fill(0);
  for (let at = 0; at < keys.length; at++) left[keys[at]! + semitones] = times[at]!;
  const best: Listed[] = [];
  let shared = 0;
  for (let at = 0; at < midis.length; at++) {
    if (left[midis[at]!]!-- > 0) shared++;
    if (at >= length && ++left[midis[at - length]!]! > 0) shared--;
    const share = (2 * shared) / (template.size + Math.min(at + 1, length));
    if (share < leastShare) continue;
    const part = Math.floor(Math.max(0, at - length / 2) / PART);
    const last = best.at(-1);
    if (last !== undefined && Math.floor((last.from + last.to) / 2 / PART) === part && last.share >= share)
      continue;
    const entry = { template, semitones, from: Math.max(0, at - length + 1), to: at + 1, share };
    if (last !== undefined && Math.floor((last.from + last.to) / 2 / PART) === part)
      best[best.length - 1] = entry;
    else best.push(entry);
  }
  return best;
}

/** Keeps the best of each part. */
function enter(parts: Listed[][], found: Listed): void {
  for (let part = Math.floor(found.from / PART); part <= Math.floor((found.to - 1) / PART); part++) {
    const list = parts[part]!;
    if (list.length >= FOLLOWED && list.at(-1)!.share >= found.share) continue;
    const same = list.findIndex(
      ({ template, semitones }) => template === found.template && semitones === found.semitones,
    );
    if (same >= 0) {
      if (list[same]!.share >= found.share) continue;
      list.splice(same, 1);
    }
    const at = list.findIndex(({ share }) => share < found.share);
    list.splice(at < 0 ? list.length : at, 0, found);
    if (list.length > FOLLOWED) list.pop();
  }
}

/** One entry an exercise and stretch: those of neighbouring parts that meet are one, with some notes of margin. */
function merged(parts: readonly (readonly Listed[])[]): readonly Listed[] {
  const all = new Set(parts.flat());
  const byExercise = new Map<Template, Map<number, Listed[]>>();
  for (const found of all) {
    const places = byExercise.get(found.template) ?? new Map<number, Listed[]>();
    byExercise.set(found.template, places);
    places.set(found.semitones, [...(places.get(found.semitones) ?? []), found]);
  }
  return [...byExercise.values()]
    .flatMap((places) => [...places.values()])
    .flatMap((same) => {
      const joined: Listed[] = [];
      for (const found of same.sort((a, b) => a.from - b.from)) {
        const margin = Math.ceil(found.template.size / 2) + PART;
        const wide = { ...found, from: Math.max(0, found.from - margin), to: found.to + margin };
        const last = joined.at(-1);
        if (last !== undefined && wide.from <= last.to)
          joined[joined.length - 1] = {
            ...last,
            to: Math.max(last.to, wide.to),
            share: Math.max(last.share, wide.share),
          };
        else joined.push(wide);
      }
      return joined;
    });
}
