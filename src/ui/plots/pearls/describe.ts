import { crossingsOf, type Report } from '../../../engine/index.ts';
import { listed, shown, withUnit } from '../../kit/figures.ts';
import { notice, strings } from '../../language/index.ts';
import { fingerName, shownName, spokenName } from '../../names/index.ts';
import type { Pearl } from './pearls.ts';
import type { Spot } from './spots.ts';

/** Louder or softer than this against the hand's mean is worth a word, dB (Slade et al. 2022: audible from about 1). */
const WORTH_SAYING_DB = 2;

/** One spot in words, for the line under the string and for screen readers (`spoken` writes signs out). */
export function describeSpot(spot: Spot, report: Report, spoken: boolean): string {
  const name = (note: string): string => (spoken ? spokenName(note) : shownName(note));
  const notes = spot.pearls.map((pearl) => describePearl(pearl, name, spot.pearls.length === 1));
  return [listed(notes), ...timing(spot, report), ...loudness(spot, report)].join('; ');
}

function describePearl(pearl: Pearl, name: (note: string) => string, alone: boolean): string {
  const finger = pearl.finger === null || !alone ? '' : `, ${fingerName(pearl.finger)}`;
  const t = strings().pearls;
  switch (pearl.kind) {
    case 'struck':
      return name(pearl.name) + finger;
    case 'wrong':
      return t.struckFor(name(pearl.name), name(pearl.wantedName)) + finger;
    case 'missed':
      return t.missed(name(pearl.name)) + finger;
    case 'unsure':
      return t.notSure(name(pearl.name), notice(pearl.reason));
    case 'extra':
      return `${name(pearl.name)} ${t.EXTRA[pearl.extraKind]}`;
  }
}

function timing(spot: Spot, report: Report): readonly string[] {
  if (spot.extra) return [];
  const crossing = crossingsOf(report).find((one) => one.step === spot.step && one.hand === spot.hand);
  if (crossing !== undefined) {
    const kind = crossing.kind === 'thumb-under' ? strings().pearls.thumbUnder : strings().pearls.overThumb;
    return [`${kind}, ${lateness(crossing.delayMs)}`];
  }
  const interval = report.measures.intervals.find((one) => one.step === spot.step);
  return interval !== undefined && interval.audible ? [lateness(interval.deviationMs)] : [];
}

function lateness(deviationMs: number): string {
  const ms = Math.round(deviationMs);
  const t = strings().pearls;
  if (ms === 0) return t.inTime;
  const amount = withUnit(String(Math.abs(ms)), 'ms');
  return ms > 0 ? t.late(amount) : t.early(amount);
}

function loudness(spot: Spot, report: Report): readonly string[] {
  const levels = report.notes
    .filter((note) => note.verdict === 'correct' && note.hand === spot.hand)
    .map((note) => note.levelDb);
  const only = spot.pearls[0];
  if (spot.extra) return [];
  if (levels.length < 3 || spot.pearls.length > 1 || only === undefined || !('levelDb' in only)) return [];
  const apart = only.levelDb - levels.reduce((sum, level) => sum + level, 0) / levels.length;
  if (Math.abs(apart) < WORTH_SAYING_DB) return [];
  const amount = withUnit(shown(Math.abs(apart)), 'dB');
  return [apart > 0 ? strings().pearls.louder(amount) : strings().pearls.softer(amount)];
}
