import type { AttemptSummary, ExerciseChoice, Form, Hands, Level } from '../../engine/index.ts';
import type { Entry, ImportOutcome, StorageUse } from '../../io/history/index.ts';
import { beatSign } from '../attempt/plan.svelte.ts';
import { shown, withUnit } from '../kit/figures.ts';
import { shownKey } from '../names/index.ts';

/** How things are called on the pages of the journal. */

export const FORM_WORDS: Readonly<Record<Form, string>> = {
  arpeggio: 'arpeggio',
  scale: 'scale',
  triads: 'triads',
  'broken-triads': 'broken triads',
  progression: 'progression',
};

export const HANDS_WORDS: Readonly<Record<Hands, string>> = {
  left: 'left hand',
  right: 'right hand',
  together: 'hands together',
};

export const LEVEL_WORDS: Readonly<Record<Level, string>> = {
  new: 'not played',
  'not-yet': 'not yet',
  nearly: 'nearly',
  ready: 'ready',
};

/** "A♭ major arpeggio, 2 octaves" */
export function musicWords({ key, form, octaves, minorScale }: ExerciseChoice): string {
  const scale = minorScale !== undefined && form === 'scale' ? `${minorScale} ` : '';
  const length =
    form === 'arpeggio' || form === 'scale' ? `, ${octaves} ${octaves === 1 ? 'octave' : 'octaves'}` : '';
  return `${shownKey(key)} ${scale}${FORM_WORDS[form]}${length}`;
}

/** "A♭ major arpeggio, 2 octaves, right hand" */
export function exerciseWords(choice: ExerciseChoice): string {
  return `${musicWords(choice)}, ${HANDS_WORDS[choice.hands]}`;
}

/** What an entry is called in the list. */
export function entryWords({ summary, choice, name }: Entry): string {
  const exercise = summary?.exercise ?? choice;
  return exercise === null ? name : exerciseWords(exercise);
}

/** How an attempt went, in figures: "13 of 13 right · evenness 9.4 % · ♩ = 77". */
export function figureWords(entry: Entry): string {
  if (entry.state === 'unanalysed') return 'not listened to yet';
  if (entry.summary === null) return 'nothing to report was heard';
  const { summary } = entry;
  const { evennessPercent, tempoBpm } = summary;
  return [
    notesWords(summary),
    ...(evennessPercent === null ? [] : [`evenness ${withUnit(shown(evennessPercent, 1), '%')}`]),
    ...(tempoBpm === null ? [] : [`${beatSign(summary.exercise.form)} = ${shown(tempoBpm)}`]),
  ].join(' · ');
}

/** "12 of 13 right, 1 extra" */
export function notesWords({ expected, wrong, missed, unsure, extra }: AttemptSummary): string {
  const right = expected - wrong - missed - unsure;
  return `${right} of ${expected} right${extra > 0 ? `, ${extra} extra` : ''}`;
}

const DAY_MS = 86_400_000;
const TIME = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });
const DATE = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });

/** A moment, as near as it is of use: "today 17:40", "yesterday 17:40", "12 Nov 2026". */
export function whenWords(whenMs: number, nowMs: number): string {
  const day = DATE.format(whenMs);
  if (day === DATE.format(nowMs)) return `today ${TIME.format(whenMs)}`;
  if (day === DATE.format(nowMs - DAY_MS)) return `yesterday ${TIME.format(whenMs)}`;
  return day;
}

/** 1 234 567 → "1.2 MB" */
export function bytesWords(bytes: number): string {
  const units = ['kB', 'MB', 'GB', 'TB'];
  let value = bytes / 1000;
  let unit = 0;
  while (value >= 999.5 && unit < units.length - 1) {
    value /= 1000;
    unit += 1;
  }
  return withUnit(shown(value, value < 10 ? 1 : 0), units[unit]!);
}

/** What the journal takes up, and what the browser gives it. */
export function storageWords(entries: readonly Entry[], storage: StorageUse | null): string {
  const sounds = entries.filter((entry) => entry.soundBytes > 0);
  const bytes = sounds.reduce((sum, entry) => sum + entry.soundBytes, 0);
  const kept = `${counted(entries.length, 'attempt')}, ${sounds.length === entries.length ? 'all' : String(sounds.length)} with sound (${bytesWords(bytes)}).`;
  if (storage === null || storage.usedBytes === null || storage.quotaBytes === null) return kept;
  return `${kept} Evenfall takes ${bytesWords(storage.usedBytes)} of the ${bytesWords(storage.quotaBytes)} that this browser allows.`;
}

/** What came of an import. */
export function importWords({ added, same, both, refused }: ImportOutcome): string {
  const parts = [
    `${counted(added, 'attempt')} added`,
    ...(same > 0 ? [`${same} here already`] : []),
    ...(both > 0 ? [`${both} here already but otherwise: both are kept`] : []),
    ...(refused.length > 0 ? [`${refused.length} not taken over`] : []),
  ];
  return `${parts.join('; ')}.`;
}

/** 1, "attempt" → "1 attempt"; 3 → "3 attempts" */
export function counted(count: number, noun: string): string {
  return `${count.toLocaleString('en-GB')} ${noun}${count === 1 ? '' : 's'}`;
}
