export { handsAloneIn } from './alone.ts';
export type { Recheck, Rechecked } from './types.ts';
import { probabilityOf } from '../base/odds.ts';
import type { HandsAlone, Heard, KeptSound, PlayedNote } from '../listen/index.ts';
import type { Hand } from '../exercise/index.ts';
import { octaveHigher } from '../match/index.ts';
import type { Alignment, Better, MatchedNote } from '../match/index.ts';
import { isSame, maybeAgain, struckAgain } from './again.ts';
import { Asker } from './asker.ts';
import type { Answer } from './asker.ts';
import { handsHeard } from './hands.ts';
import { settleStep } from './settle.ts';
import type { Settled } from './settle.ts';
import { asSureAsBoth, isNearest } from './strangers.ts';
import { Strays } from './strays.ts';
import type { HeardExtra, Listening, Rechecked } from './types.ts';
import { lookAtUnheard } from './unheard.ts';
import { withoutVoices } from './voices.ts';

/**
 * A second, separate listening with the exercise in hand. With more than one note at a time each written note of a step of which
 * something was heard is looked at on the sound itself: was it struck, and when? First of all notes together: does each
 * hand play at all? Then step by step: notes that were left missed or unsure are found again or called missed, reported ones that the
 * sound does not bear out are withdrawn, a key struck in place of a missed one is looked for, and onsets that the blind ear drew
 * together are told apart. A key that sounds again before the next step is asked about, too. It presumes nothing: what is written is evidence of little weight beside the sound. A step of which nothing was
 * heard, single notes too, is looked for where those beside it let it be expected. What was asked and answered stays in `rechecks`. `alone`: what hands alone sounded like on this
 * piano, to compare with.
 */
export function recheck(
  heard: Heard,
  aligned: Alignment,
  sound: KeptSound,
  alone: HandsAlone | null = null,
): Rechecked {
  const alignment = withoutVoices(heard, aligned, sound);
  const single = alignment.exercise.steps.every(({ notes }) => notes.length === 1);
  const isRight = alignment.matched.every(({ verdict }) => verdict !== 'wrong' && verdict !== 'missed');
  if (single && isRight && alignment.extras.length === 0 && maybeAgain(heard, alignment).length === 0)
    return { heard, alignment, rechecks: [] };
  const listenTo = (read: Alignment): Listening => listen(heard, read, sound, alone, single);
  const asRead = listenTo(alignment);
  const higher = isUpperAlone(asRead) ? listenTo(octaveHigher(heard, alignment)) : null;
  const isHigher = higher?.hands.right.presence === 'there' && foundOf(higher) > foundOf(asRead);
  const listening = isHigher ? higher : asRead;
  const settled = settleSteps(listening);
  const { matched, rechecks } = lookAtUnheard(settled.alignment, listening.asker);
  return {
    heard: settled.heard,
    alignment: { ...settled.alignment, matched },
    rechecks: [...settled.rechecks, ...rechecks].sort((a, b) => a.step - b.step),
  };
}

/** Whether the closer look is sure that both hands of an alignment are there. */
export function hearsBothHands(
  heard: Heard,
  alignment: Alignment,
  sound: KeptSound,
  alone: HandsAlone | null = null,
): boolean {
  const { hands } = listen(heard, alignment, sound, alone, false);
  return hands.left.presence === 'there' && hands.right.presence === 'there';
}

/** All written notes asked about; of single ones, of which the blind ear is sure, only those not heard or that another key stands for. */
function listen(
  heard: Heard,
  alignment: Alignment,
  sound: KeptSound,
  alone: HandsAlone | null,
  single: boolean,
): Listening {
  const asker = new Asker(heard, sound, alignment, alone);
  const answers = alignment.matched.map(({ verdict }, place) =>
    single && verdict !== 'missed' && verdict !== 'wrong' ? null : asker.askWritten(place),
  );
  const hands = handsHeard(
    alignment,
    answers.map((answer) => answer?.logOdds ?? null),
  );
  const strays = new Strays(asker, heard.notes, alignment);
  return { asker, heard, alignment, answers, hands, strays, rechecks: [] };
}

/** A hand of which the closer look finds less than this share of the notes may be a few ghosts of the other one's. */
const FEW = 0.5;

/**
 * Of both hands only the upper sounds, but for few notes. A lower hand is covered by nothing, so it may be the lower one that sounds, an octave higher
 * than it was taken to lie, and the upper one too soft to be heard blind.
 */
function isUpperAlone(listening: Listening): boolean {
  const { alignment, hands } = listening;
  if (alignment.exercise.choice.hands !== 'together' || hands.right.presence !== 'there') return false;
  const left = alignment.matched.filter(({ expected }) => expected.hand === 'left').length;
  return hands.left.presence !== 'there' || foundOf(listening, 'left') < FEW * left;
}

/** Of so many written notes the closer look believes rather than not that they were struck: of one hand, or of both. */
function foundOf({ alignment, answers }: Listening, hand?: Hand): number {
  return alignment.matched.filter(
    ({ expected }, place) =>
      (hand === undefined || expected.hand === hand) && (answers[place]?.logOdds ?? 0) > 0,
  ).length;
}

/** Every step of which something was heard or found. */
function settleSteps(listening: Listening): Rechecked {
  const { heard, alignment, answers } = listening;
  const steps = alignment.exercise.steps.map(({ step }) => settleStep(listening, step));
  const settled = steps.flatMap(({ written }) => written).sort((a, b) => a.place - b.place);
  const again = struckAgain(listening, maybeAgain(heard, alignment));
  const extras = [...extrasBetween(listening), ...steps.flatMap((step) => step.extras), ...again];
  const found = [...settled, ...extras].flatMap(({ note }) => note ?? []);
  const rest = notAsked(heard, alignment).filter((note) => !again.some((one) => isSame(one.note, note)));
  const notes = [...new Set([...rest, ...found])].sort((a, b) => a.timeSec - b.timeSec || a.midi - b.midi);
  const indexOf = new Map(notes.map((note, index) => [note, index]));
  const { betterFit, ...asChosen } = alignment;
  return {
    heard: { ...heard, notes },
    alignment: {
      ...asChosen,
      ...(betterFit && isBorneOut(listening, settled, betterFit) && { betterFit }),
      matched: settled.map(({ place, verdict, note, reason }): MatchedNote => {
        const { step, expected } = alignment.matched[place]!;
        if (verdict === 'missed') return { step, expected, verdict, ...surelyMissed(answers[place]!) };
        if (verdict !== 'unsure') return { step, expected, verdict, played: indexOf.get(note!)! };
        const unsure = { step, expected, verdict, reason: reason! };
        return note === null ? unsure : { ...unsure, played: indexOf.get(note)! };
      }),
      extras: extras
        .map(({ note, kind, step }) => ({ played: indexOf.get(note)!, kind, step }))
        .sort((a, b) => a.played - b.played),
    },
    rechecks: listening.rechecks,
  };
}

/** A note called missing is as sure as the closer look at it; one of a step of which nothing was heard is looked at afterwards. */
function surelyMissed(answer: Answer | null): { readonly sure?: number } {
  return answer === null ? {} : { sure: probabilityOf(-answer.logOdds) };
}

/**
 * That one hand alone was heard in place of both is said only where the other is surely not there: no note of it was found, and it is
 * not merely too soft to tell.
 */
function isBorneOut(
  { alignment, hands }: Listening,
  settled: readonly Settled[],
  { choice }: Better,
): boolean {
  if (alignment.exercise.choice.hands !== 'together' || choice.hands === 'together') return true;
  const isSilent = (hand: Hand): boolean =>
    hands[hand].presence === 'not-there' &&
    settled.every(
      ({ place, verdict }) => alignment.matched[place]!.expected.hand !== hand || verdict !== 'correct',
    );
  return isSilent('left') || isSilent('right');
}

/** Extras at no step's moment. */
function extrasBetween(listening: Listening): readonly HeardExtra[] {
  const { heard, alignment } = listening;
  return alignment.extras.flatMap(({ played, kind, step }) => {
    const note = heard.notes[played]!;
    const isAtStep = alignment.exercise.steps.some((one) => isNearest(listening, note, one.step));
    return isAtStep ? [] : [{ note: asSureAsBoth(listening, step, note, kind), kind, step }];
  });
}

/** Notes that neither stood for a written one nor were reported as extras. */
function notAsked({ notes }: Heard, { matched, extras }: Alignment): readonly PlayedNote[] {
  const asked = new Set([
    ...matched.flatMap((note) => ('played' in note ? [note.played] : [])),
    ...extras.map(({ played }) => played),
  ]);
  return notes.filter((_, index) => !asked.has(index));
}
