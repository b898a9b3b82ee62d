import { UsageError } from '../base/errors.ts';
import { fieldsOf } from '../base/shapes.ts';
import { settleFingering } from './fingers.ts';
import { FORM_GROUPS, FORMS } from './forms/index.ts';
import type { FormGroup } from './forms/index.ts';
import { ALL_KEYS, normaliseKey } from './keys.ts';
import { ENGLISH, keyName } from './names.ts';
import type { Locale } from './names.ts';
import { TITLE_WORDS } from './titles.ts';
import { CHOICE, HANDS, MINOR_SCALE, REGISTER } from './types.ts';
import type { ExerciseChoice, Form, Hands, MinorScale, NotesABeat } from './types.ts';

/** In the order in which they are offered; a passage of one's own is none of the set. */
export const ALL_FORMS = (Object.keys(FORMS) as readonly Form[]).filter((form) => form !== 'passage');
/** The same by what they are kinds of. */
export const GROUPED_FORMS: readonly { readonly group: FormGroup; readonly forms: readonly Form[] }[] =
  FORM_GROUPS.map((group) => ({ group, forms: ALL_FORMS.filter((form) => FORMS[form].group === group) }));
export const ALL_HANDS: readonly Hands[] = HANDS.options;
/** Octaves from where books print it, lowest first. */
export const REGISTERS = REGISTER.options;
export const ALL_MINOR_SCALES: readonly MinorScale[] = MINOR_SCALE.options;

/** The minor scale that is meant when none is said; common practice, no source. */
const DEFAULT_MINOR_SCALE: MinorScale = 'harmonic';

/** Whether a form is played over a chosen number of octaves; the others always have one. */
export function hasOctaves(form: Form): boolean {
  return FORMS[form].mostOctaves > 1;
}

/** The lengths there are of it, in octaves. */
export function octaveCounts(form: Form): readonly number[] {
  return Array.from({ length: FORMS[form].mostOctaves }, (_, index) => index + 1);
}

/** The length that is offered first, in octaves. */
export function usualOctaves(form: Form): number {
  return FORMS[form].usualOctaves;
}

/** Whether its steps are chords, struck as a whole. */
export function isSolid(form: Form): boolean {
  return FORMS[form].isSolid;
}

/** Whether its chords are named by numerals. */
export function isCadence(form: Form): boolean {
  return FORMS[form].hasNumerals;
}

/** Whether all its notes belong to the key, in minor with the raised sixth and seventh. */
export function isDiatonic(form: Form): boolean {
  return FORMS[form].isDiatonic;
}

/** Whether it is found among everything that is heard; others are heard only where they were chosen. */
export function isRecognised({ form, hands }: Pick<ExerciseChoice, 'form' | 'hands'>): boolean {
  const { recognised } = FORMS[form];
  return recognised === 'always' || (recognised === 'together' && hands === 'together');
}

/** Whether songs are full of it, so that with faults it may be one of them. */
export function isCommonElsewhere(form: Form): boolean {
  return FORMS[form].isCommonElsewhere;
}

/** Who can be asked to play it: both alone where only both make it what it is. Each hand of it may be practised by itself. */
export function handsFor(form: Form): readonly Hands[] {
  return FORMS[form].needsBothHands ? ['together'] : ALL_HANDS;
}

/** Steps a beat. */
export function notesABeat({ form, notesABeat }: Pick<ExerciseChoice, 'form' | 'notesABeat'>): NotesABeat {
  return notesABeat ?? FORMS[form].notesABeat;
}

/** Whether its beat is a dotted note, of three steps or six. */
export function isDotted(choice: Pick<ExerciseChoice, 'form' | 'notesABeat'>): boolean {
  return notesABeat(choice) % 3 === 0;
}

/** How many of them can go to a beat: scales and arpeggios are played in twos, threes, fours and sixes, the others in one way. */
export function notesABeatOf(form: Form): readonly NotesABeat[] {
  const { group, notesABeat } = FORMS[form];
  return form !== 'passage' && (group === 'scales' || group === 'arpeggios') ? RUNS_A_BEAT : [notesABeat];
}
const RUNS_A_BEAT: readonly NotesABeat[] = [1, 2, 3, 4, 6];

/**
 * Every exercise there is, once: 24 keys, all forms, hands, 1 to 4 octaves, three minor scales; in the usual register, rhythm and
 * fingering.
 *
 * @example
 * const scales = allChoices().filter(({ form }) => form === 'scale');
 */
export function allChoices(): readonly ExerciseChoice[] {
  return ALL_KEYS.flatMap((key) =>
    ALL_FORMS.flatMap((form) =>
      handsFor(form).flatMap((hands) =>
        octaveCounts(form).flatMap((octaves): readonly ExerciseChoice[] =>
          takesMinorScale(key, form)
            ? ALL_MINOR_SCALES.map((minorScale) => ({ key, form, hands, octaves, minorScale }))
            : [{ key, form, hands, octaves }],
        ),
      ),
    ),
  );
}

/**
 * A choice as written → the same choice with its key spelt our way and the minor scale said where there is one.
 *
 * @throws UsageError on a form, hands, number of octaves or minor scale that the exercise does not have.
 */
export function settleChoice(choice: ExerciseChoice): ExerciseChoice {
  const { form, hands, octaves, minorScale, passage } = choice;
  const key = normaliseKey(choice.key);
  if ((form === 'passage') !== (passage !== undefined))
    throw new UsageError(
      passage === undefined
        ? 'form=passage needs the passage itself. Hand it over, or choose another form.'
        : `passage does not go with form=${form}. Use form=passage, or leave the passage out.`,
    );
  requireOneOf('form', form, Object.keys(FORMS));
  requireOneOf('hands', hands, ALL_HANDS);
  requireOctaves(form, octaves);
  if (passage !== undefined) return { key, form, hands, octaves, passage };
  if (!takesMinorScale(key, form)) {
    if (minorScale !== undefined) {
      throw new UsageError(
        `minorScale=${minorScale} does not go with ${form} in ${key}; only scales of a minor key have one. Leave it out.`,
      );
    }
    return { key, form, hands, octaves, ...settledOthers(choice) };
  }
  if (minorScale !== undefined) requireOneOf('minorScale', minorScale, ALL_MINOR_SCALES);
  const settled = { key, form, hands, octaves, minorScale: minorScale ?? DEFAULT_MINOR_SCALE };
  return { ...settled, ...settledOthers({ ...choice, ...settled }) };
}

/** What is not as usual, and nothing that is. */
function settledOthers(
  choice: ExerciseChoice,
): Pick<ExerciseChoice, 'fingering' | 'notesABeat' | 'register'> {
  const { form, notesABeat: asked, register } = choice;
  if (asked !== undefined && !notesABeatOf(form).includes(asked))
    throw new UsageError(
      `notesABeat=${asked} is not possible for ${form}; use ${notesABeatOf(form).join(', ')}.`,
    );
  const fingering = settleFingering(choice);
  return {
    ...(fingering !== null && { fingering }),
    ...(asked !== undefined && asked !== FORMS[form].notesABeat && { notesABeat: asked }),
    ...(register !== undefined && { register }),
  };
}

/**
 * A choice → its title, e.g. "A♭ major · tonic arpeggio, two octaves · right hand"; throws as `settleChoice` does.
 */
export function exerciseTitle(choice: ExerciseChoice, locale: Locale = ENGLISH): string {
  const settled = settleChoice(choice);
  const words = TITLE_WORDS[locale.language];
  if (settled.passage !== undefined) {
    const title = settled.passage.title.trim();
    return `${title === '' ? words.form(settled) : title} · ${words.hands[settled.hands]}`;
  }
  const length = hasOctaves(settled.form) ? `, ${words.octaves[settled.octaves - 1]!}` : '';
  return `${keyName(settled.key, locale)} · ${words.form(settled)}${length} · ${words.hands[settled.hands]}`;
}

/** Of something that holds more, as a report does: the choice alone. */
export const choiceIn = (choice: ExerciseChoice): ExerciseChoice => fieldsOf(CHOICE, choice);

/** Whether there are three of it in this key: natural, harmonic, melodic. */
export function takesMinorScale(key: string, form: Form): boolean {
  return FORMS[form].hasMinorScales && key.endsWith('minor');
}

function requireOctaves(form: Form, octaves: number): void {
  if (octaveCounts(form).includes(octaves)) return;
  throw new UsageError(
    hasOctaves(form)
      ? `octaves=${octaves} is not possible; an exercise in ${form} form has 1 to ${FORMS[form].mostOctaves}. Choose one of these.`
      : `octaves=${octaves} is not possible; ${form} always has 1. Use 1, or choose arpeggio or scale.`,
  );
}

function requireOneOf(name: string, value: string, accepted: readonly string[]): void {
  if (accepted.includes(value)) return;
  throw new UsageError(`${name}=${value} is not known; use one of ${accepted.join(', ')}.`);
}
