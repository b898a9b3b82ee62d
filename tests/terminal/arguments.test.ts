import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/terminal/arguments.ts';
import { editDistance, nearest } from '../../src/terminal/hints.ts';
import { Problem } from '../../src/terminal/problems.ts';

/** A command line as a shell splits it; double quotes hold words together. */
const parse = (line: string) =>
  parseCommand([...line.matchAll(/"([^"]*)"|(\S+)/g)].map((match) => match[1] ?? match[2]!));

describe('a command line', () => {
  it.each(['analyse a.wav', 'desk pile', 'transcribe a.wav', 'review a.zip'])(
    'says in which language: %s',
    (words) => {
      expect(parse(`${words} --language de`)).toMatchObject({ language: 'de' });
      expect(parse(words)).toMatchObject({ language: 'en' });
    },
  );

  it.each([
    ['desk week --csv - --json', /one thing only/],
    ['desk week --html -', /name a folder/],
    ['transcribe a.wav --midi - --json', /one thing only/],
    ['transcribe a.wav --as-exercise - --json', /one thing only/],
    ['review a.zip --html - --json', /one thing only/],
  ])('puts one thing on standard output: %s', (words, why) => {
    expect(() => parse(words)).toThrow(why);
  });

  it('says what to analyse and as what (the contract: src/terminal/README.md)', () => {
    expect(
      parse(
        'analyse a.wav --key "D major" --form arpeggio --hands right --octaves 2 --bpm 80 --even 6 --json',
      ),
    ).toEqual({
      kind: 'analyse',
      files: ['a.wav'],
      choice: { key: 'D major', form: 'arpeggio', hands: 'right', octaves: 2 },
      intention: null,
      asChosen: false,
      amongFile: null,
      targetBpm: 80,
      evennessPercent: 6,
      pianoFile: null,
      levelsFile: null,
      archive: { linesFile: null, shard: null, listFile: null },
      force: false,
      language: 'en',
      json: true,
      quiet: false,
    });
  });

  it('says what of it was to be practised, steps as they are shown', () => {
    const exercise = 'analyse a.wav --key "D major" --form arpeggio --hands right --octaves 2';
    expect(parse(`${exercise} --stretch 4-9 --times 3 --rhythm long-short`)).toMatchObject({
      intention: { stretch: { fromStep: 3, toStep: 8 }, times: 3, rhythm: 'long-short' },
    });
    expect(parse(`${exercise} --rhythm groups-of-4`)).toMatchObject({
      intention: { times: 1, rhythm: 'groups-of-4' },
    });
    expect(parse(`${exercise} --stretch down --touch staccato --loudness fading`)).toMatchObject({
      intention: {
        stretch: { fromStep: 6, toStep: 12 },
        times: 1,
        rhythm: 'even',
        touch: 'staccato',
        loudness: 'fading',
      },
    });
    expect(parse(`${exercise} --blocked --times 2`)).toMatchObject({
      intention: { times: 2, rhythm: 'even', blocked: true },
    });
    expect(parse(`${exercise} --ladder 4`)).toMatchObject({ intention: { ladderBpm: 4 } });
  });

  it('measures what was chosen where that is insisted on', () => {
    const words = 'analyse a.wav --key D --form scale --hands left --as-chosen'.split(' ');
    words[3] = 'D major';
    expect(parseCommand(words)).toMatchObject({ kind: 'analyse', asChosen: true });
  });

  it.each(['F# minor', 'F♯ minor', 'f♯ Minor', 'f#m'])('takes the key %s', (key) => {
    const command = parse(`analyse a.wav --key "${key}" --form scale --hands left --minor-scale melodic`);
    expect(command).toMatchObject({ choice: { key: 'F# minor', octaves: 1, minorScale: 'melodic' } });
  });

  it('takes other fingers, notes to a beat and a register', () => {
    const scale = 'exercises --key "Ab major" --form scale --octaves 2';
    expect(parse(`${scale} --hands together --fingering thumbs-together,second-first`)).toMatchObject({
      what: { fingering: { left: 'thumbs-together', right: 'second-first' } },
    });
    expect(
      parse(`${scale} --hands left --fingering as-in-c --notes-a-beat 6 --register 1-down`),
    ).toMatchObject({
      what: { fingering: { left: 'as-in-c' }, notesABeat: 6, register: -1 },
    });
  });

  it('leaves the exercise to be recognised, takes several files and standard input', () => {
    expect(parse('analyse a.wav - b.mp3 -q')).toMatchObject({
      files: ['a.wav', '-', 'b.mp3'],
      choice: null,
      quiet: true,
    });
    expect(parse('transcribe a.wav --midi out.mid')).toMatchObject({
      kind: 'transcribe',
      midiFile: 'out.mid',
      force: false,
      language: 'en',
    });
    expect(parse('analyse a.wav --among mine.json')).toMatchObject({ choice: null, amongFile: 'mine.json' });
    expect(parse('desk week --among mine.json')).toMatchObject({ amongFile: 'mine.json' });
    expect(parse('transcribe a.wav --as-exercise own.json --bpm free --time 6/8 --hands left')).toMatchObject(
      {
        asExercise: {
          file: 'own.json',
          layOut: { bpm: null, time: { count: 6, unit: 8 }, hands: 'left', title: '' },
        },
      },
    );
  });

  it.each([
    ['--help', { kind: 'help', about: null, language: 'en' }],
    ['-h', { kind: 'help', about: null, language: 'en' }],
    ['analyse --help', { kind: 'help', about: 'analyse', language: 'en' }],
    ['help desk --language de', { kind: 'help', about: 'desk', language: 'de' }],
    ['--version', { kind: 'version' }],
    ['exercises', { kind: 'exercises', what: 'all', language: 'en', json: false }],
    ['exercises --json', { kind: 'exercises', what: 'all', language: 'en', json: true }],
    [
      'exercises --key "Bb major"',
      { kind: 'exercises', what: { key: 'Bb major' }, language: 'en', json: false },
    ],
  ])('%s', (line, command) => {
    expect(parse(line)).toEqual(command);
  });

  it.each([
    ['', /Nothing to do.*--help/],
    ['analize a.wav', /no command.*Did you mean "analyse"\?/],
    ['analyse', /at least one sound file/],
    ['analyse a.wav --hand left', /no option --hand\. Did you mean "--hands"\?/],
    ['analyse a.wav --key', /--key.*argument missing.*--help/i],
    ['analyse a.wav --key "D major"', /add --form and --hands/],
    [
      'analyse a.wav --key "D mayor" --form scale --hands left',
      /"D mayor" is no key\. Did you mean "D major"\?/,
    ],
    ['analyse a.wav --key "H dur" --form scale --hands left', /is no key\. Write e\.g\./],
    ['analyse a.wav --key "D major" --form arpegio --hands left', /Did you mean "arpeggio"\?/],
    ['analyse a.wav --key "D major" --form scale --hands both', /one of left, right, together/],
    ['analyse a.wav --key "D major" --form scale --hands left --octaves 5', /--octaves 5 .*1 to 4/],
    ['analyse a.wav --stretch 2-6', /--stretch alone .*--key and --form and --hands/],
    ['analyse a.wav --key "D major" --form scale --hands left --stretch 9-99', /two of its steps, 1 to 15/],
    ['analyse a.wav --key "D major" --form scale --hands left --stretch 6-6', /two of its steps, 1 to 15/],
    [
      'analyse a.wav --key "D major" --form progression --hands left --stretch up',
      /or up or down where it turns back/,
    ],
    ['analyse a.wav --key "D major" --form scale --hands together --blocked', /needs one hand alone/],
    ['analyse a.wav --key "D major" --form triads --hands left --blocked', /come one by one/],
    [
      'analyse a.wav --key "D major" --form scale --hands left --loudness right-over-left',
      /right-over-left needs --hands together/,
    ],
    [
      'analyse a.wav --key "D major" --form scale --hands left --rhythm long-shrt',
      /Did you mean "long-short"/,
    ],
    ['analyse a.wav --key "D major" --form scale --hands left --octaves 1.5', /whole number/],
    ['analyse a.wav --key "D major" --form triads --hands left --octaves 2', /triads always has 1/],
    ['analyse a.wav --key "D major" --form scale --hands left --minor-scale melodic', /minor key/],
    ['exercises --key "D major" --form scale --fingering second-first', /only the usual/],
    ['exercises --key "Ab major" --form scale --fingering thumbs-together', /second-first, as-in-c/],
    ['exercises --key "D major" --form triads --notes-a-beat 4', /has 1/],
    ['exercises --key "D major" --form scale --register 9-up', /1-up, 2-up/],
    ['exercises --key "D major" --form scale --octaves 4 --register 3-up', /beyond the keyboard/],
    ['analyse a.wav --bpm fast', /--bpm fast must be a number from 20 to 400/],
    ['analyse a.wav --even 1', /--even 1 must be a number from 2 to 30/],
    ['desk folder --even 80', /--even 80 must be a number from 2 to 30/],
    ['analyse - -', /only once/],
    ['transcribe a.wav b.wav --midi out.mid', /one recording/],
    ['transcribe a.wav b.wav --as-exercise out.json', /one recording/],
    ['transcribe a.wav --time 3/4', /goes with --as-exercise/],
    ['transcribe a.wav --as-exercise out.json --time 3', /no metre/],
    ['transcribe a.wav --as-exercise out.json --bpm 900', /--bpm 900/],
    ['exercises scale', /one word too many/],
    ['exercises --form scale', /Add --key/],
  ])('%s is wrong usage, with the way out', (line, message) => {
    expect(() => parse(line)).toThrow(message);
    try {
      parse(line);
    } catch (error) {
      expect((error as Problem).exitCode).toBe(2);
    }
  });
});

describe('a hint', () => {
  /** Damerau (1964): four kinds of slip, each one step. The rows are one slip each, or none, or the textbook's longer pair. */
  it.each([
    ['scale', 'scale', 0],
    ['scal', 'scale', 1],
    ['scaale', 'scale', 1],
    ['scake', 'scale', 1],
    ['sacle', 'scale', 1],
    ['kitten', 'sitting', 3],
  ])('counts the slips from %s to %s: %i', (a, b, slips) => {
    expect(editDistance(a, b)).toBe(slips);
  });

  it('is not given where nothing is near', () => {
    expect(nearest('mazurka', ['arpeggio', 'scale'])).toBeNull();
    expect(nearest('Arpegio', ['arpeggio', 'scale'])).toBe('arpeggio');
  });
});
