import { isDotted, keyFacts, notesABeat, stepMs } from '../../engine/index.ts';
import type { Exercise, ExpectedStep, Hand, Report, ReportedNote } from '../../engine/index.ts';
import { attribute, element, empty, type Xml } from './xml.ts';

/** What the parts are called, in the language of whoever reads them. */
export interface MusicXmlNames {
  readonly title: string;
  readonly written: string;
  readonly played: string;
}

/** Divisions of a quarter note: so fine that where a note sounded is told to a millisecond at 60. */
const DIVISIONS = 960;
const BEATS_A_BAR = 4;
/** Sixteenths that one note can last, the longest first, with its name and dots. */
const LENGTHS = [
  [24, 'whole', 1],
  [16, 'whole', 0],
  [12, 'half', 1],
  [8, 'half', 0],
  [6, 'quarter', 1],
  [4, 'quarter', 0],
  [3, 'eighth', 1],
  [2, 'eighth', 0],
  [1, '16th', 0],
] as const;
const SIXTEENTH = DIVISIONS / 4;
/** A bar of four dotted beats, in sixteenths. */
const DOTTED_BAR = 24;

/** How the notes of an exercise stand in bars of four beats, each step in an equal place. */
interface Meter {
  /** sixteenths of one step, and of a bar */
  readonly step: number;
  readonly bar: number;
  readonly stepsABar: number;
}

/** One note as it is written into a part. */
interface Written {
  readonly name: string;
  readonly finger: number | null;
  /** x: another key than written; paren: not to be told */
  readonly head?: 'x' | 'paren';
  /** sixteenths by which it came after its place; before: negative */
  readonly after?: number;
}

/** What a hand does in a step: notes at once, and such as were struck besides, after them. */
interface Event {
  readonly notes: readonly Written[];
  readonly besides: readonly string[];
}

/**
 * Report → MusicXML 4.0 (W3C Community Group, 2021) with two parts: the exercise as it is written, and the same as it was played. There
 * a note struck in another's place has a cross for its head, one that cannot be told stands in brackets, a missed one is a rest, what
 * was struck besides follows as a grace note, and `attack` tells by how much a note came after its place.
 */
export function encodeMusicXml(report: Report, exercise: Exercise, names: MusicXmlNames): string {
  const hands = (['right', 'left'] as const).filter((hand) =>
    exercise.steps.some(({ notes }) => notes.some((note) => note.hand === hand)),
  );
  const meter = meterOf(exercise);
  const parts = [
    { id: 'P1', name: names.written, of: (step: ExpectedStep, hand: Hand) => asWritten(step, hand) },
    {
      id: 'P2',
      name: names.played,
      of: (step: ExpectedStep, hand: Hand) => asPlayed(report, step, hand, meter),
    },
  ];
  const list = parts.map(({ id, name }) =>
    element('score-part', attribute('id', id), [element('part-name', '', name)]),
  );
  const score = element('score-partwise', attribute('version', '4.0'), [
    element('work', '', [element('work-title', '', names.title)]),
    element('identification', '', [element('encoding', '', [element('software', '', 'Evenfall')])]),
    element('part-list', '', list),
    ...parts.map(({ id, of }) =>
      element('part', attribute('id', id), bars(report, exercise, hands, meter, of)),
    ),
  ]);
  return (
    '<?xml version="1.0" encoding="UTF-8"?>\n' +
    '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">\n' +
    `${score}\n`
  );
}

function meterOf({ choice }: Exercise): Meter {
  const stepsABeat = notesABeat(choice);
  const sixteenthsABeat = isDotted(choice) ? 6 : 4;
  return {
    step: sixteenthsABeat / stepsABeat,
    bar: BEATS_A_BAR * sixteenthsABeat,
    stepsABar: BEATS_A_BAR * stepsABeat,
  };
}

function asWritten({ notes }: ExpectedStep, hand: Hand): Event {
  const own = notes.filter((note) => note.hand === hand);
  return { notes: own.map(({ name, finger }) => ({ name, finger })), besides: [] };
}

function asPlayed(report: Report, step: ExpectedStep, hand: Hand, { step: sixteenths }: Meter): Event {
  const here = report.notes.filter((note) => note.step === step.step && (note.hand ?? hand) === hand);
  const interval = report.measures.intervals.find((one) => one.step === step.step);
  const { tempoBpm } = report.measures;
  const after =
    'value' in tempoBpm && interval !== undefined
      ? (interval.deviationMs / stepMs(report.exercise, tempoBpm.value)) * sixteenths
      : 0;
  const struck = here.flatMap(({ verdict, name, finger }: ReportedNote): readonly Written[] =>
    verdict === 'extra' ? [] : [{ name, finger, after, ...(verdict === 'wrong' && { head: 'x' as const }) }],
  );
  const untold = report.unsure.flatMap(({ step: at, hand: of, midi }): readonly Written[] => {
    const name = step.notes.find((note) => note.midi === midi)?.name;
    return at !== step.step || of !== hand || name === undefined
      ? []
      : [{ name, finger: null, head: 'paren' }];
  });
  return {
    notes: [...struck, ...untold],
    besides: here.flatMap(({ verdict, name }) => (verdict === 'extra' ? [name] : [])),
  };
}

function bars(
  report: Report,
  exercise: Exercise,
  hands: readonly Hand[],
  meter: Meter,
  of: (step: ExpectedStep, hand: Hand) => Event,
): readonly Xml[] {
  const { steps } = exercise;
  const count = Math.ceil(steps.length / meter.stepsABar);
  return Array.from({ length: count }, (_, index) => {
    const own = steps.slice(index * meter.stepsABar, (index + 1) * meter.stepsABar);
    const voices = hands.map((hand, staff) =>
      own.flatMap((step, at) => {
        const isLast = index === count - 1 && at === own.length - 1;
        const sixteenths = isLast ? meter.bar - at * meter.step : meter.step;
        return notesOf(of(step, hand), hand, hands.length > 1 ? staff + 1 : null, sixteenths);
      }),
    );
    const back = element('backup', '', [element('duration', '', String(meter.bar * SIXTEENTH))]);
    return element('measure', attribute('number', String(index + 1)), [
      ...(index === 0 ? [head(exercise, hands, meter), ...tempo(report, meter)] : []),
      ...voices.flatMap((voice, at) => (at === 0 ? voice : [back, ...voice])),
    ]);
  });
}

function head({ choice }: Exercise, hands: readonly Hand[], meter: Meter): Xml {
  const { signature, accidental, mode } = keyFacts(choice.key);
  const fifths = accidental === 'flats' ? -signature.length : signature.length;
  const dotted = meter.bar === DOTTED_BAR;
  return element('attributes', '', [
    element('divisions', '', String(DIVISIONS)),
    element('key', '', [element('fifths', '', String(fifths)), element('mode', '', mode)]),
    element('time', '', [
      element('beats', '', dotted ? '12' : '4'),
      element('beat-type', '', dotted ? '8' : '4'),
    ]),
    ...(hands.length > 1 ? [element('staves', '', String(hands.length))] : []),
    ...hands.map((hand, at) =>
      element('clef', hands.length > 1 ? attribute('number', String(at + 1)) : '', [
        element('sign', '', hand === 'left' ? 'F' : 'G'),
        element('line', '', hand === 'left' ? '4' : '2'),
      ]),
    ),
  ]);
}

/** The tempo that was played, in quarters a minute. */
function tempo({ measures: { tempoBpm } }: Report, meter: Meter): readonly Xml[] {
  if (!('value' in tempoBpm)) return [];
  const quarters = meter.bar === DOTTED_BAR ? tempoBpm.value * 1.5 : tempoBpm.value;
  return [empty('sound', attribute('tempo', quarters.toFixed(2)))];
}

/** What a hand does in a step, so many sixteenths long: its chord or a rest, rests up to the end, and what was struck besides. */
function notesOf(event: Event, hand: Hand, staff: number | null, sixteenths: number): readonly Xml[] {
  const where = [element('voice', '', staff === 2 ? '5' : '1')];
  const onStaff = staff === null ? [] : [element('staff', '', String(staff))];
  const lengths = lengthsOf(sixteenths);
  return lengths.flatMap(([long, type, dots], at) => {
    const duration = element('duration', '', String(long * SIXTEENTH));
    const kind = [element('type', '', type), ...Array.from({ length: dots }, () => empty('dot'))];
    if (at > 0 || event.notes.length === 0)
      return [element('note', '', [empty('rest'), duration, ...where, ...kind, ...onStaff])];
    const chord = event.notes.map((note, place) =>
      element('note', attackOf(note), [
        ...(place === 0 ? [] : [empty('chord')]),
        ...[pitch(note.name), duration, ...where, ...kind],
        ...headOf(note),
        ...onStaff,
        ...fingerOf(note, hand),
      ]),
    );
    const besides = event.besides.map((name) =>
      element('note', '', [
        empty('grace', attribute('slash', 'yes')),
        ...[pitch(name), ...where, element('type', '', 'eighth'), ...onStaff],
      ]),
    );
    return [...chord, ...besides];
  });
}

function lengthsOf(sixteenths: number): readonly (typeof LENGTHS)[number][] {
  const longest = LENGTHS.find(([long]) => long <= sixteenths);
  return longest === undefined ? [] : [longest, ...lengthsOf(sixteenths - longest[0])];
}

function pitch(name: string): Xml {
  const [, letter = '', sign = '', octave = ''] = /^([A-G])(##|#|bb|b)?(-?\d+)$/.exec(name) ?? [];
  const alter = { '': 0, '#': 1, '##': 2, b: -1, bb: -2 }[sign] ?? 0;
  return element('pitch', '', [
    element('step', '', letter),
    ...(alter === 0 ? [] : [element('alter', '', String(alter))]),
    element('octave', '', octave),
  ]);
}

function attackOf({ after = 0 }: Written): string {
  const divisions = Math.round(after * SIXTEENTH);
  return divisions === 0 ? '' : attribute('attack', String(divisions));
}

function headOf({ head: shape }: Written): readonly Xml[] {
  if (shape === undefined) return [];
  return [
    shape === 'x'
      ? element('notehead', '', 'x')
      : element('notehead', attribute('parentheses', 'yes'), 'normal'),
  ];
}

function fingerOf({ finger }: Written, hand: Hand): readonly Xml[] {
  if (finger === null) return [];
  const placement = attribute('placement', hand === 'right' ? 'above' : 'below');
  return [
    element('notations', '', [element('technical', '', [element('fingering', placement, String(finger))])]),
  ];
}
