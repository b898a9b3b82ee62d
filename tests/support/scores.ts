import { parse } from 'musicxml-io';
import type { Score } from 'musicxml-io';
import { keyFacts } from '../../src/engine/exercise/index.ts';
import type { ExerciseChoice, Hand, WrittenNote } from '../../src/engine/exercise/index.ts';

/** Divisions of a quarter note: sixteenths and triplets alike. */
const DIVISIONS = 48;

/**
 * A passage of the simulated kind → a score of another library's making (musicxml-io), to be written by it. Each hand is a staff; what a hand
 * begins together is a chord, and a length over the next note is kept by a voice of its own.
 */
export function asMusicXml(choice: ExerciseChoice): Score {
  const passage = choice.passage!;
  const { signature, accidental, mode } = keyFacts(choice.key);
  const hands = (['right', 'left'] as const).filter((hand) =>
    passage.notes.some((note) => note.hand === hand),
  );
  let from = 0;
  const measures = passage.bars.map(({ beats, count, unit }, at) => {
    const begins = from;
    from += beats;
    const voices = hands.map((hand, staff) =>
      voiceOf(
        passage.notes.filter(
          (note) => note.hand === hand && note.beat >= begins - 1e-3 && note.beat < from - 1e-3,
        ),
        begins,
        beats,
        hands.length > 1 ? staff + 1 : null,
        hand,
      ),
    );
    const back = `<backup><duration>${Math.round(beats * DIVISIONS)}</duration></backup>`;
    const clef = (hand: Hand, staff: number): string =>
      `<clef${hands.length > 1 ? ` number="${staff + 1}"` : ''}><sign>${hand === 'left' ? 'F' : 'G'}</sign><line>${hand === 'left' ? 4 : 2}</line></clef>`;
    const attributes =
      at > 0
        ? ''
        : `<attributes><divisions>${DIVISIONS}</divisions><key><fifths>${accidental === 'flats' ? -signature.length : signature.length}</fifths><mode>${mode}</mode></key><time><beats>${count}</beats><beat-type>${unit}</beat-type></time>${hands.length > 1 ? '<staves>2</staves>' : ''}${hands.map(clef).join('')}</attributes><direction><direction-type><words>tempo</words></direction-type><sound tempo="${passage.bpm}"/></direction>`;
    return `<measure number="${at + 1}">${attributes}${voices.join(back)}</measure>`;
  });
  return parse(
    `<score-partwise version="4.0"><work><work-title>${passage.title}</work-title></work><part-list><score-part id="P1"><part-name>Piano</part-name></score-part></part-list><part id="P1">${measures.join('')}</part></score-partwise>`,
  );
}

function voiceOf(
  notes: readonly WrittenNote[],
  begins: number,
  beats: number,
  staff: number | null,
  hand: Hand,
): string {
  const ends = Math.round(beats * DIVISIONS);
  const onStaff = staff === null ? '' : `<staff>${staff}</staff>`;
  const voice = `<voice>${hand === 'left' ? 5 : 1}</voice>`;
  const rest = (length: number): string =>
    length <= 0 ? '' : `<note><rest/><duration>${length}</duration>${voice}${onStaff}</note>`;
  const moments = new Map<number, WrittenNote[]>();
  for (const note of notes) {
    const at = Math.round((note.beat - begins) * DIVISIONS);
    moments.set(at, [...(moments.get(at) ?? []), note]);
  }
  let at = 0;
  const written = [...moments]
    .sort(([a], [b]) => a - b)
    .map(([moment, chord]) => {
      const before = rest(moment - at);
      const length = Math.round(chord[0]!.beats * DIVISIONS);
      at = moment + length;
      return (
        before +
        chord
          .map(({ name }, place) => {
            const [, step, sign = '', octave] = /^([A-G])(#*|b*)(\d)$/.exec(name)!;
            const alter =
              sign === '' ? '' : `<alter>${sign.startsWith('#') ? sign.length : -sign.length}</alter>`;
            return `<note>${place > 0 ? '<chord/>' : ''}<pitch><step>${step}</step>${alter}<octave>${octave}</octave></pitch><duration>${length}</duration>${voice}${onStaff}</note>`;
          })
          .join('')
      );
    });
  return written.join('') + rest(ends - at);
}
