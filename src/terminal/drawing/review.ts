import {
  buildExercise,
  exerciseIn,
  exerciseTitle,
  isWhole,
  nameWithOctave,
  tellIntention,
  tellReport,
} from '../../engine/index.ts';
import type { Exercise, Language } from '../../engine/index.ts';
import { withExamples } from '../../io/review/index.ts';
import type { Assigned, RemarkPlace, Review, SentAttempt } from '../../io/review/index.ts';
import { MESSAGES, REPORTS, localeOf } from '../language/index.ts';
import { toPlain, wrapText } from './text.ts';

interface Width {
  readonly columns: number;
  readonly unicode: boolean;
}

/** Text → its lines, wrapped and set in by so many columns. */
type Indented = (text: string, indent: number) => string[];

/** Review → the lines that are read in a terminal. Pure; all text in it was made plain when it was read. */
export function drawReview(review: Review, { columns, unicode }: Width, language: Language = 'en'): string[] {
  const t = MESSAGES[language].review;
  const { kind, student, teacher, madeMs, words, attempts, assignment } = review;
  const head = [
    kind === 'review' ? t.review(student) : t.attempts(student),
    ...(teacher === '' ? [] : [kind === 'review' ? t.from(teacher) : t.to(teacher)]),
    dayOf(madeMs, language),
  ];
  // What a mark begins goes on under its words.
  const indented: Indented = (text, indent) =>
    text.split('\n').flatMap((line) => {
      const hang = /^(?:-|\d+\.) /.exec(line)?.[0].length ?? 0;
      return wrapText(line, columns - indent - hang).map((one, at) =>
        (' '.repeat(indent + (at === 0 ? 0 : hang)) + one).trimEnd(),
      );
    });
  return [
    ...indented(head.join(', '), 0),
    ...(words === '' ? [] : ['', ...indented(words, 0)]),
    ...withExamples({ attempts }).flatMap(({ attempt, example }, at) => [
      '',
      ...drawAttempt(attempt, at + 1, indented, language),
      ...(example === null ? [] : indented(t.example, 3)),
    ]),
    ...(assignment.length === 0 ? [] : ['', t.toPractise]),
    ...assignment.flatMap((asked, at) => [
      ...indented(
        `${at + 1}. ${exerciseTitle(buildExercise(asked.exercise).choice, localeOf(language))}: ${askedWords(asked, language)}`,
        2,
      ),
      ...(asked.note === '' ? [] : indented(asked.note, 5)),
    ]),
  ].map((line) => (unicode ? line : toPlain(line)));
}

function drawAttempt(attempt: SentAttempt, number: number, indented: Indented, language: Language): string[] {
  const t = MESSAGES[language].review;
  const locale = localeOf(language);
  const words = tellReport(attempt.report, locale);
  const { report, name, whenMs, sound, recognisedAs, remarks, corrections } = attempt;
  const exercise = exerciseIn(report);
  const facts = [
    ...(name === '' ? [] : [t.names[name] ?? name]),
    ...(whenMs === null ? [] : [t.played(dayOf(whenMs, language))]),
    sound === null ? t.withoutSound : t.withSound,
  ];
  return [
    ...indented(`${number}. ${exerciseTitle(exercise.choice, locale)}`, 0),
    ...indented(facts.join(', '), 3),
    ...indented(words.verdict, 3),
    // One thing alone has been said in the verdict.
    ...(words.list.length > 1 ? words.list : []).flatMap(({ text }) => indented(`- ${text}`, 3)),
    ...(recognisedAs === null ? [] : indented(t.takenFor(exerciseTitle(recognisedAs, locale)), 3)),
    ...corrections.flatMap(({ place, verdict, why }) =>
      indented(t.corrects(placeWords(place, exercise, language), t.verdicts[verdict], why), 3),
    ),
    ...remarks.flatMap(({ place, text, voice }) =>
      indented(
        `- ${placeWords(place, exercise, language)}: ${[text, voice === null ? '' : t.spoken].filter((part) => part !== '').join(' ')}`,
        3,
      ),
    ),
    ...indented(`${REPORTS[language].next}: ${words.nextStep}`, 3),
  ];
}

/** "the attempt", "note 5 (C6)", "notes 7 to 10 (A♭6 to A♭5)". */
function placeWords(place: RemarkPlace, { steps }: Exercise, language: Language): string {
  const t = MESSAGES[language].review;
  const { naming } = localeOf(language);
  const nameOf = (step: number, midi?: number): string => {
    const notes = steps[step]?.notes ?? [];
    const own = notes.find((note) => midi !== undefined && (note.midi - midi) % 12 === 0) ?? notes[0];
    return nameWithOctave(own?.name ?? '', naming);
  };
  switch (place.kind) {
    case 'attempt':
      return t.wholeAttempt;
    case 'stretch':
      return t.stretch(place.fromStep + 1, place.toStep + 1, nameOf(place.fromStep), nameOf(place.toStep));
    case 'note':
      return place.step === null
        ? t.extraNote(place.timeSec === null ? '' : decimal(place.timeSec.toFixed(1), language))
        : t.note(place.step + 1, nameOf(place.step, place.midi));
  }
}

function askedWords(
  { exercise, targetBpm, inARow, evennessPercent, intention }: Assigned,
  language: Language,
): string {
  const t = MESSAGES[language].review;
  const parts = [
    ...(intention === undefined || isWhole(intention)
      ? []
      : [tellIntention(exercise, intention, localeOf(language))]),
    ...(targetBpm === null ? [] : [t.atTempo(targetBpm)]),
    ...(inARow === null ? [] : [t.inARow(inARow)]),
    ...(evennessPercent === null ? [] : [t.evenness(decimal(String(evennessPercent), language))]),
  ];
  return parts.length === 0 ? t.asUsual : parts.join(', ');
}

const decimal = (text: string, language: Language): string =>
  text.replace('.', REPORTS[language].decimalSign);

function dayOf(whenMs: number, language: Language): string {
  return new Intl.DateTimeFormat(MESSAGES[language].dateLocale, {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
  }).format(whenMs);
}
