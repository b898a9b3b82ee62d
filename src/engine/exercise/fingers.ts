import { UsageError } from '../base/errors.ts';
import { variantsOf } from './fingering/index.ts';
import type { Variant } from './fingering/index.ts';
import { canBeginWithSecond, FORMS } from './forms/index.ts';
import type { Place } from './forms/index.ts';
import { parseKey } from './keys.ts';
import { withFingerIn } from './passage.ts';
import type { ExerciseChoice, Fingering, Hand, WrittenFinger } from './types.ts';

/** What is fingered: a hand's part of it. */
type Fingered = Pick<ExerciseChoice, 'key' | 'form' | 'octaves' | 'minorScale'>;

/** The principles by which a hand can play it, beside the usual one; none where its fingers are the same everywhere. */
export function principlesFor({ key, form, minorScale }: Fingered, hand: Hand): readonly Variant[] {
  const { fingeredAs, places, lowest } = FORMS[form];
  if (fingeredAs === null) return [];
  const parts = parseKey(key);
  if (fingeredAs !== 'further-arpeggio')
    return variantsOf(fingeredAs, { key: parts.name, hand, minorScale: minorScale ?? null });
  if (hand === 'left') return [];
  const start = `${lowest(parts)}4`;
  const usual = places({ key: parts, hand, start, octaves: 1, minorScale: null, principle: null });
  const fingers = usual.map(({ keys }) => keys[0]!.finger);
  return canBeginWithSecond(fingers) ? [{ principle: 'second-first', source: null }] : [];
}

/**
 * The fingering of a choice as it counts: only of the hands that play, nothing where that leaves none.
 *
 * @throws UsageError on a principle that this hand does not have there.
 */
export function settleFingering(choice: ExerciseChoice): Fingering | null {
  const { fingering, hands } = choice;
  if (fingering === undefined) return null;
  const plays = (hand: Hand): boolean => hands === 'together' || hand === hands;
  const written = fingering.written?.filter(({ hand }) => plays(hand)) ?? [];
  const of = (hand: Hand): Fingering => {
    const principle = fingering[hand];
    if (principle === undefined || !plays(hand)) return {};
    const known = principlesFor(choice, hand).map((one) => one.principle);
    if (known.includes(principle)) return { [hand]: principle };
    throw new UsageError(
      `fingering.${hand}=${principle} is not possible for ${choice.form} in ${choice.key}; ` +
        (known.length === 0 ? 'there is only the usual one. Leave it out.' : `use ${known.join(', ')}.`),
    );
  };
  const settled = { ...of('left'), ...of('right'), ...(written.length > 0 && { written }) };
  return Object.keys(settled).length > 0 ? settled : null;
}

/** Places of one hand → the same under the fingers that are written over them. @throws UsageError on one that lies nowhere. */
export function underWritten(
  places: readonly Place[],
  written: readonly WrittenFinger[],
  hand: Hand,
): readonly Place[] {
  const own = written.filter((one) => one.hand === hand);
  if (own.length === 0) return places;
  for (const { step, fromBottom } of own)
    if (places[step]?.keys[fromBottom] === undefined)
      throw new UsageError(`written.step=${step}, fromBottom=${fromBottom} is no note of this exercise.`);
  return places.map((place, step) => ({
    ...place,
    keys: place.keys.map((key, fromBottom) => {
      const found = own.findLast((one) => one.step === step && one.fromBottom === fromBottom);
      return found === undefined ? key : { ...key, finger: found.finger };
    }),
  }));
}

/** A choice → the same with another principle for a hand; null: the usual one. What was written over single notes of that hand goes. */
export function withPrinciple(
  choice: ExerciseChoice,
  hand: Hand,
  principle: Fingering['left'] | null,
): ExerciseChoice {
  const { [hand]: _, written = [], ...other } = choice.fingering ?? {};
  return withFingering(choice, {
    ...other,
    ...(principle && { [hand]: principle }),
    written: written.filter((one) => one.hand !== hand),
  });
}

/** A choice → the same with a finger written over one of its notes; null: as it was without. In a passage it is the note's own. */
export function writeFinger(
  choice: ExerciseChoice,
  place: Omit<WrittenFinger, 'finger'>,
  finger: number | null,
): ExerciseChoice {
  if (choice.passage !== undefined)
    return { ...choice, passage: withFingerIn(choice.passage, choice.hands, place, finger) };
  const written = (choice.fingering?.written ?? []).filter(
    (one) => one.hand !== place.hand || one.step !== place.step || one.fromBottom !== place.fromBottom,
  );
  const more = finger === null ? [] : [{ ...place, finger }];
  return withFingering(choice, { ...choice.fingering, written: [...written, ...more] });
}

function withFingering(choice: ExerciseChoice, { written, ...principles }: Fingering): ExerciseChoice {
  const { fingering: _, ...plain } = choice;
  const fingering = { ...principles, ...(written !== undefined && written.length > 0 && { written }) };
  return Object.keys(fingering).length > 0 ? { ...plain, fingering } : plain;
}

/** A choice → what stays of it where its fingers are the usual ones. */
export function unfingered({ fingering: _, ...choice }: ExerciseChoice): ExerciseChoice {
  return choice;
}

/**
 * A choice and the ones whose fingering somebody keeps, newest first → the choice with the kept fingering, where it says nothing of its
 * own: principles of the same music at any length, written fingers only at the same one.
 */
export function withKeptFingers(choice: ExerciseChoice, kept: readonly ExerciseChoice[]): ExerciseChoice {
  if (choice.fingering !== undefined || choice.passage !== undefined) return choice;
  const same = kept.filter((one) => isSameMusic(one, choice));
  const principles = same[0]?.fingering ?? {};
  const written = same.find(({ octaves }) => octaves === choice.octaves)?.fingering?.written;
  const { written: _, ...hands } = principles;
  const fingered = withFingering(choice, { ...hands, ...(written !== undefined && { written }) });
  const own = settleFingering(fingered);
  return own === null ? choice : { ...choice, fingering: own };
}

/** The kept ones, newest first, with a choice's fingering among them: what it says of the hands that play takes the place of what was. */
export function keepFingering(
  kept: readonly ExerciseChoice[],
  choice: ExerciseChoice,
): readonly ExerciseChoice[] {
  const both = withKeptFingers(unfingered({ ...choice, hands: 'together' }), kept).fingering ?? {};
  const played = (hand: Hand): boolean => choice.hands === 'together' || choice.hands === hand;
  const { written: before = [], ...principles } = both;
  const { written: now = [], ...own } = choice.fingering ?? {};
  const others = Object.fromEntries(
    Object.entries(principles).filter(([hand]) => !played(hand as Hand)),
  ) as Fingering;
  const next = withFingering(unfingered({ ...choice, hands: 'together' }), {
    ...others,
    ...own,
    written: [...before.filter(({ hand }) => !played(hand)), ...now],
  });
  const isIts = (one: ExerciseChoice): boolean => isSameMusic(one, choice) && one.octaves === choice.octaves;
  return [next, ...kept.filter((one) => !isIts(one))].slice(0, MOST_KEPT);
}

/** More than all keys of a few forms. */
const MOST_KEPT = 200;

const isSameMusic = (a: ExerciseChoice, b: ExerciseChoice): boolean =>
  a.key === b.key && a.form === b.form && (a.minorScale ?? 'harmonic') === (b.minorScale ?? 'harmonic');
