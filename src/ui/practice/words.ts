import { ALL_HANDS, capital, hasOctaves, isWhole, takesMinorScale } from '../../engine/index.ts';
import type {
  Assignment,
  AttemptSummary,
  ExerciseChoice,
  Fastest,
  FormStandings,
  PlanItem,
  Offer,
} from '../../engine/index.ts';
import type { Entry, ImportOutcome, StorageUse } from '../../io/history/index.ts';
import { beatSign } from '../attempt/plan.svelte.ts';
import { shown, withUnit } from '../kit/figures.ts';
import { intentionWords, soundName, strings } from '../language/index.ts';
import { shownKey } from '../names/index.ts';
import { progressWords } from './assigned-words.ts';
import { standingWords } from './standing-words.ts';

/** How things are called on the pages of the journal, in the language of the page. */

/** "A♭ major arpeggio, 2 octaves" */
export function musicWords({ key, form, octaves, minorScale, passage }: ExerciseChoice): string {
  const t = strings().journal;
  if (passage !== undefined) return passage.title.trim() === '' ? t.FORMS.passage : passage.title;
  const minor = takesMinorScale(key, form);
  const name = minor
    ? t.FORMS[form].replace(t.FORMS.scale, t.minorScales[minorScale ?? 'harmonic'])
    : t.FORMS[form];
  const length = hasOctaves(form) ? `, ${t.octaves(octaves)}` : '';
  return `${t.called(shownKey(key), minor ? tonicOf(key) : null, name)}${length}`;
}

/** The key without its mode, which the scale's name says already: "A", "a". */
export function tonicOf(key: string): string {
  return shownKey(key).replace(/[ -]\S+$/, '');
}

/** "A♭ major arpeggio, 2 octaves, right hand" */
export function exerciseWords(choice: ExerciseChoice): string {
  return `${musicWords(choice)}, ${strings().journal.HANDS[choice.hands]}`;
}

/** "♩ = 80" */
export function tempoWords(choice: Pick<ExerciseChoice, 'form' | 'notesABeat'>, bpm: number): string {
  return `${beatSign(choice)} = ${shown(bpm)}`;
}

/** The fastest tempo still even, and how it grew. */
export function fastestWords(exercise: ExerciseChoice, fastest: Fastest, nowMs: number): string {
  const t = strings().journal.fastest;
  const { bpm, plusMinus, history } = fastest;
  const tempo = tempoWords(exercise, bpm);
  const now = plusMinus === null ? t.atLeast(tempo) : t.about(`${tempo} ± ${shown(Math.max(1, plusMinus))}`);
  const grew = history
    .slice(-MOST_STEPS)
    .map((one) => `${shown(one.bpm)} (${whenWords(dayStart(one.whenMs), nowMs)})`);
  return grew.length < 2 ? now : `${now} ${t.grew(grew.join(', '))}`;
}

/** So many are read at a glance. */
const MOST_STEPS = 4;

/** Its clock is of no use here. */
const dayStart = (whenMs: number): number => new Date(whenMs).setHours(0, 0, 0, 0);

/** What an entry is called in the list. */
export function entryWords({ summary, choice, name }: Entry): string {
  const exercise = summary?.exercise ?? choice;
  return exercise === null ? soundName(name) : exerciseWords(exercise);
}

/** How the attempt of an entry went, or why nothing is told of it. */
export function figureWords({ state, summary }: Entry): string {
  const t = strings().journal.list;
  if (state === 'unanalysed') return t.unanalysed;
  return summary === null ? t.noReport : summaryWords(summary);
}

/** How an attempt went, in figures: "13 of 13 right · evenness 9.4 % · ♩ = 77". */
export function summaryWords(summary: AttemptSummary): string {
  const t = strings().journal.list;
  const { evennessPercent, tempoBpm, exercise } = summary;
  return [
    notesWords(summary),
    ...(evennessPercent === null ? [] : [t.evenness(percentWords(evennessPercent))]),
    ...(tempoBpm === null ? [] : [tempoWords(exercise, tempoBpm)]),
  ].join(' · ');
}

/** "9.4 %" */
export function percentWords(value: number): string {
  return withUnit(shown(value, 1), '%');
}

/** "12 of 13 right, 1 extra" */
export function notesWords({ expected, wrong, missed, unsure, extra }: AttemptSummary): string {
  return strings().journal.list.right(expected - wrong - missed - unsure, expected, extra);
}

/** One item of the plan: how long, how fast, and why. */
export function planWords({ exercise, targetBpm, minutes, reason }: PlanItem): string {
  const t = strings().journal;
  const tempo = targetBpm === null ? '' : `, ${tempoWords(exercise, targetBpm)}`;
  const why = {
    assigned: () => (reason.kind === 'assigned' ? assignedWords(reason.assignment) : ''),
    weak: () => (reason.kind === 'weak' ? standingWords(reason.standing).reason : ''),
    'long-ago': () => (reason.kind === 'long-ago' ? t.reasons.longAgo(reason.days) : ''),
    offer: () => (reason.kind === 'offer' ? offerWords(reason.offer) : ''),
    upkeep: () => t.reasons.upkeep,
    'hand-first': () => t.reasons.handFirst,
    beside: () => t.reasons.beside,
    first: () => t.reasons.first,
  }[reason.kind]();
  return `${t.today.length(minutes, tempo)} ${why}`;
}

/** How it is to be practised where a teacher asks for that, and how far it is. */
function assignedWords(assignment: Assignment): string {
  const { intention, exercise } = assignment.asked;
  const how =
    intention === undefined || isWhole(intention) ? '' : `${capital(intentionWords(exercise, intention))}. `;
  return how + strings().fromTeacher.inPlan(progressWords(assignment));
}

/** Why something may be begun. */
export function offerWords({ kind, exercise, targetBpm, since }: Offer): string {
  const t = strings().journal.reasons;
  return {
    'other-hand': () => t.otherHand,
    together: () => t.together,
    'next-form': () => t.nextForm(shownKey(since.key)),
    'next-key': () => t.nextKey(shownKey(since.key), shownKey(exercise.key)),
    faster: () => t.faster(targetBpm === null ? '' : tempoWords(exercise, targetBpm)),
    'more-octaves': () => t.moreOctaves(shownKey(since.key)),
  }[kind]();
}

/** What the three pearls of a place say: "left hand nearly, right hand ready, hands together not played". */
export function placeWords(place: FormStandings): string {
  const t = strings().journal;
  const hands = ALL_HANDS.map((one) => `${t.HANDS[one]} ${t.LEVELS[place.byHands[one].level]}`);
  return `${shownKey(place.key)} ${t.FORMS[place.form]}: ${hands.join(', ')}`;
}

/** Whether an entry has all the words that are searched for: in its exercise, its name, its figures or its date. */
export function isFound(entry: Entry, search: string, nowMs: number): boolean {
  const words = search
    .toLocaleLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  if (words.length === 0) return true;
  const { whenMs, name } = entry;
  const said = [
    entryWords(entry),
    soundName(name),
    figureWords(entry),
    whenWords(whenMs, nowMs),
    dateWords(whenMs),
  ];
  const text = said.join(' ').toLocaleLowerCase();
  return words.every((word) => text.includes(word));
}

const DAY_MS = 86_400_000;

/** A moment, as near as it is of use: "today 17:40", "yesterday 17:40", "12 Nov 2026". */
export function whenWords(whenMs: number, nowMs: number): string {
  const { locale, list } = strings().journal;
  const { date, time } = clocksOf(locale);
  const day = date.format(whenMs);
  const clock = isWholeDay(whenMs) ? '' : time.format(whenMs);
  if (day === date.format(nowMs)) return list.today(clock).trim();
  if (day === date.format(nowMs - DAY_MS)) return list.yesterday(clock).trim();
  return day;
}

/** The same, whenever it is read: "29 Nov 2026 17:40". */
export function dateWords(whenMs: number): string {
  const { date, time } = clocksOf(strings().journal.locale);
  return isWholeDay(whenMs) ? date.format(whenMs) : `${date.format(whenMs)} ${time.format(whenMs)}`;
}

/** Whether only the day is known, as of a recording whose name tells no more: its moment is midnight. */
export function isWholeDay(whenMs: number): boolean {
  return new Date(whenMs).setHours(0, 0, 0, 0) === whenMs;
}

/** Whether two moments, ms since 1970, lie on one day of the calendar. */
export function isOneDay(oneMs: number, otherMs: number): boolean {
  const { date } = clocksOf(strings().journal.locale);
  return date.format(oneMs) === date.format(otherMs);
}

interface Clocks {
  readonly date: Intl.DateTimeFormat;
  readonly time: Intl.DateTimeFormat;
}
const clocks: Record<string, Clocks> = {};

/** Made once for a language: making one takes longer than drawing a row. */
function clocksOf(locale: string): Clocks {
  return (clocks[locale] ??= {
    date: new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', year: 'numeric' }),
    time: new Intl.DateTimeFormat(locale, { hour: '2-digit', minute: '2-digit' }),
  });
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
  const t = strings().journal.storage;
  const sounds = entries.filter((entry) => entry.soundBytes > 0);
  const bytes = sounds.reduce((sum, entry) => sum + entry.soundBytes, 0);
  const kept = t.kept(entries.length, sounds.length, bytesWords(bytes));
  if (storage === null || storage.usedBytes === null || storage.quotaBytes === null) return kept;
  return `${kept} ${t.use(bytesWords(storage.usedBytes), bytesWords(storage.quotaBytes))}`;
}

/** What came of an import. */
export function importWords({ added, same, both, refused }: ImportOutcome): string {
  const t = strings().journal.storage;
  const parts = [
    t.added(added),
    ...(same > 0 ? [t.same(same)] : []),
    ...(both > 0 ? [t.both(both)] : []),
    ...(refused.length > 0 ? [t.refused(refused.length)] : []),
  ];
  return `${parts.join('; ')}.`;
}
