import { describe, expect, it } from 'vitest';
import { assessHeard, buildExercise, tellWords } from '../../../src/engine/index.ts';
import type { AssessOptions, Assessment, HandsAlone, Locale, Notice } from '../../../src/engine/index.ts';
import { CurrentAttempt, type Devices } from '../../../src/ui/attempt/current-attempt.svelte.ts';
import { Journal } from '../../../src/ui/attempt/journal.svelte.ts';
import { Plan } from '../../../src/ui/attempt/plan.svelte.ts';
import { invent, INVENTED } from '../support/invent.ts';

const { exercise, report } = invent(INVENTED.lateThumb);
const heard = {
  notes: [],
  tuning: { cents: 0, a4Hz: 440, sdCents: 1, strays: [] },
  findings: [],
  passages: [],
  durationSec: 6,
  sampleRateHz: 48_000,
  onsetSdMs: 2,
};
const told: Assessment = {
  kind: 'report',
  heard,
  rechecks: [],
  alignment: {
    exercise,
    octaveShift: 0,
    semitoneShift: 0,
    matched: [],
    extras: [],
    remarks: [],
    run: { startSec: 0, endSec: 6 },
    fit: 1,
  },
  report,
};
const SOUND = { channels: [new Float32Array(48)], sampleRateHz: 48_000 };

const LEFT_ALONE: HandsAlone = { '48>60': [{ seen: 'A'.repeat(256) }] };

const AUTOMATIC_GAIN: Notice = { notice: 'device-processing', by: 'automatic-gain' };

function rig(changed: Partial<Devices> = {}, journal = new Journal(null)) {
  const asked: { choice: unknown; earlier: number }[] = [];
  const closed: string[] = [];
  const opened: (string | null)[] = [];
  const microphone = {
    deviceLabel: 'invented',
    sampleRateHz: SOUND.sampleRateHz,
    nowSec: () => 0,
    onBlock: () => () => undefined,
    take: () => ({ ...SOUND, processing: [] }),
    level: () => ({ rmsDb: -30, peakDb: -20, heldPeakDb: -20, clipped: false }),
    start: () => undefined,
    stop: () => Promise.resolve({ ...SOUND, processing: [AUTOMATIC_GAIN] }),
    onEnded: () => undefined,
    close: () => void closed.push('microphone'),
  };
  const devices: Devices = {
    analyst: {
      analyse: (_sound, choice, options) => {
        asked.push({ choice, earlier: options.earlier?.length ?? 0 });
        return Promise.resolve(told);
      },
      cancel: () => void closed.push('analysis'),
      close: () => undefined,
    },
    decode: () => Promise.resolve({ ...SOUND, remarks: [] }),
    openMicrophone: (deviceId) => {
      opened.push(deviceId);
      return Promise.resolve(microphone);
    },
    listMicrophones: () =>
      Promise.resolve([
        { deviceId: 'a', label: 'Built in' },
        { deviceId: 'b', label: 'On the desk' },
      ]),
    createPlayback: () => ({
      play: () => undefined,
      stop: () => undefined,
      positionSec: () => null,
      onEnd: () => undefined,
      close: () => void closed.push('playback'),
    }),
    eachFrame: () => undefined,
    ...changed,
  };
  const plan = new Plan();
  return { currentAttempt: new CurrentAttempt(devices, plan, journal), plan, asked, closed, opened };
}

const file = new File([new Uint8Array(4)], 'attempt-7.wav');

describe('the desk', () => {
  it('explains the microphone once, then records at one touch, and counts the attempts', async () => {
    const { currentAttempt, asked, closed } = rig();
    await currentAttempt.record();
    expect(currentAttempt.phase.kind).toBe('explaining');
    await currentAttempt.openMicrophone();
    expect(currentAttempt.phase.kind).toBe('ready');
    currentAttempt.start();
    await currentAttempt.stop();
    expect(currentAttempt.attempt?.sound.remarks).toEqual([AUTOMATIC_GAIN]);
    expect(closed).toEqual(['microphone']);
    await currentAttempt.record();
    expect(currentAttempt.phase.kind).toBe('recording');
    await currentAttempt.stop();
    expect(asked.map(({ earlier }) => earlier)).toEqual([0, 1]);
  });

  it('teaches the piano with what is recorded here, once, and with no opened file', async () => {
    const taught: Assessment[] = [];
    const piano = { known: null, learnFrom: (one: Assessment) => void taught.push(one) };
    const { currentAttempt } = rig({ piano });
    await currentAttempt.open(file);
    expect(taught).toEqual([]);
    await currentAttempt.openMicrophone();
    currentAttempt.start();
    await currentAttempt.stop();
    await currentAttempt.listenAs(INVENTED.lateThumb.choice);
    expect(taught).toEqual([told]);
  });

  it('hands what opened files taught of hands alone on to those that follow, and what this piano did to what is recorded', async () => {
    const known = { ...LEFT_ALONE, '50>62': LEFT_ALONE['48>60']! };
    const options: Partial<AssessOptions>[] = [];
    const piano = {
      known: {
        version: 1,
        tuningCents: { value: 0, plusMinus: 1, count: 9 },
        keys: {},
        alone: known,
      } as const,
      learnFrom: () => undefined,
    };
    const analyst = {
      analyse: (_sound: unknown, _choice: unknown, asked: Partial<AssessOptions>) => {
        options.push(asked);
        return Promise.resolve({ ...told, handsAlone: LEFT_ALONE });
      },
      cancel: () => undefined,
      close: () => undefined,
    };
    const { currentAttempt } = rig({ analyst, piano });
    await currentAttempt.open(file);
    await currentAttempt.open(file);
    await currentAttempt.openMicrophone();
    currentAttempt.start();
    await currentAttempt.stop();
    const ofJournal = { ...SOUND, name: 'kept', recordedHere: true, remarks: [] };
    await currentAttempt.listenTo(ofJournal, INVENTED.lateThumb.choice);
    expect(options.map(({ alone }) => alone)).toEqual([null, LEFT_ALONE, undefined, known]);
    // Its tuning is presumed of nothing that may be of another piano.
    expect(options.map((one) => one.piano?.alone)).toEqual([undefined, undefined, known, undefined]);
    expect(options.every(({ learnHands }) => learnHands)).toBe(true);
  });

  it('changes to another microphone, closes the first, and keeps to the new one', async () => {
    const { currentAttempt, closed, opened } = rig();
    await currentAttempt.openMicrophone();
    expect(currentAttempt.microphones.map(({ label }) => label)).toEqual(['Built in', 'On the desk']);
    await currentAttempt.useMicrophone('b');
    expect(currentAttempt.phase.kind).toBe('ready');
    expect(closed).toEqual(['microphone']);
    currentAttempt.start();
    await currentAttempt.stop();
    await currentAttempt.record();
    expect(opened).toEqual([null, 'b', 'b']);
  });

  it('takes over the exercise that was recognised', async () => {
    const { currentAttempt, plan, asked } = rig();
    plan.recognise = true;
    await currentAttempt.open(file);
    expect(asked[0]?.choice).toBeNull();
    expect(plan.choice).toEqual(INVENTED.lateThumb.choice);
  });

  it('goes by where each hand is known to have played, of files opened here too, where one is to be recognised', async () => {
    const known: unknown[] = [];
    const analyst = {
      analyse: (_: unknown, __: unknown, { handsPlayed }: Partial<AssessOptions>) => {
        known.push(handsPlayed);
        return Promise.resolve(told);
      },
      cancel: () => undefined,
      close: () => undefined,
    };
    const { currentAttempt, plan } = rig({ analyst });
    for (const name of ['first.wav', 'second.wav']) {
      plan.recognise = true;
      await currentAttempt.open(new File([new Uint8Array(4)], name));
    }
    const { midi } = report.notes[0]!;
    expect(known).toEqual([[], [{ form: 'arpeggio', hand: 'right', midi }]]);
  });

  it('keeps the sound when the analysis fails', async () => {
    const failing = {
      analyse: () => Promise.reject(new Error('Something broke.')),
      cancel: () => undefined,
      close: () => undefined,
    };
    const { currentAttempt } = rig({ analyst: failing });
    await currentAttempt.open(file);
    expect(currentAttempt.phase.kind).toBe('idle');
    expect(currentAttempt.trouble).toMatchObject({
      what: 'analysis',
      why: { trouble: 'unforeseen', detail: 'Something broke.' },
    });
    expect(currentAttempt.trouble?.sound?.name).toBe('attempt-7.wav');
  });

  it('says what is wrong with a file and keeps the report before it', async () => {
    const answers = [Promise.resolve({ ...SOUND, remarks: [] }), Promise.reject(new Error('It is damaged.'))];
    const { currentAttempt } = rig({ decode: () => answers.shift()! });
    await currentAttempt.open(file);
    await currentAttempt.open(file);
    expect(currentAttempt.trouble).toMatchObject({ what: 'file', why: { detail: 'It is damaged.' } });
    expect(currentAttempt.attempt).not.toBeNull();
  });

  it('forgets an answer that comes after a cancel', async () => {
    let answer: (assessment: Assessment) => void = () => undefined;
    const slow = {
      analyse: () => new Promise<Assessment>((resolve) => (answer = resolve)),
      cancel: () => undefined,
      close: () => undefined,
    };
    const { currentAttempt } = rig({ analyst: slow });
    const opened = currentAttempt.open(file);
    await Promise.resolve();
    await Promise.resolve();
    await new Promise((resolve) => setTimeout(resolve, 0));
    expect(currentAttempt.phase.kind).toBe('listening');
    currentAttempt.cancel();
    answer(told);
    await opened;
    expect(currentAttempt.phase.kind).toBe('idle');
    expect(currentAttempt.attempt).toBeNull();
  });

  it('does not use up a report of a file as an earlier attempt of the player', async () => {
    const { currentAttempt, asked } = rig();
    await currentAttempt.open(file);
    await currentAttempt.openMicrophone();
    currentAttempt.start();
    await currentAttempt.stop();
    expect(asked.map(({ earlier }) => earlier)).toEqual([0, 0]);
  });

  it('stores a recording before it is analysed, and the report after', async () => {
    const journal = new Journal(null);
    const states: (string | undefined)[] = [];
    const { currentAttempt } = rig(
      {
        analyst: {
          analyse: () => {
            states.push(journal.shown.at(-1)?.state);
            return Promise.resolve(told);
          },
          cancel: () => undefined,
          close: () => undefined,
        },
      },
      journal,
    );
    await currentAttempt.openMicrophone();
    currentAttempt.start();
    await currentAttempt.stop();
    states.push(journal.shown.at(-1)?.state);
    expect(states).toEqual(['unanalysed', 'told']);
    expect(journal.shown[0]).toMatchObject({ device: 'invented', name: 'your recording' });
  });

  it('puts an opened file into the journal only when it is asked to', async () => {
    const journal = new Journal(null);
    const { currentAttempt } = rig({}, journal);
    await currentAttempt.open(file);
    expect(journal.shown).toEqual([]);
    await currentAttempt.adopt();
    expect(journal.shown).toHaveLength(1);
    expect(journal.shown[0]).toMatchObject({ state: 'told', name: 'attempt-7.wav' });
    await currentAttempt.listenAs(null);
    expect(journal.shown).toHaveLength(1);
  });
});

describe('the plan', () => {
  it('drops what does not fit the new form', () => {
    const plan = new Plan();
    plan.choose({ form: 'scale', key: 'A minor', octaves: 3, minorScale: 'melodic' });
    expect(plan.hasMinorScale).toBe(true);
    plan.choose({ form: 'progression' });
    expect(plan.choice).toEqual({ key: 'A minor', form: 'progression', hands: 'right', octaves: 1 });
    expect(plan.hasOctaves).toBe(false);
  });

  it('means what was set up, until the whole is played again, and with the other hand too', () => {
    const plan = new Plan();
    const intention = { stretch: { fromStep: 2, toStep: 4 }, times: 3, rhythm: 'even' } as const;
    plan.setUp({ fromStep: 2, toStep: 4, tempoBpm: 48, intention });
    expect(plan.intention).toEqual(intention);
    expect(plan.intentionFor({ ...plan.choice, hands: 'left' })).toEqual(intention);
    expect(plan.intentionFor({ ...plan.choice, key: 'D major' })).toBeNull();
    expect(plan.intentionFor(null)).toBeNull();
    plan.wholeAgain();
    expect(plan.intention).toBeNull();
  });

  it('sets up a stretch and its tempo, and goes back to the whole and its own', () => {
    const plan = new Plan();
    plan.targetBpm = 92;
    plan.setUp({ fromStep: 0, toStep: 4, tempoBpm: 60.4 });
    plan.setUp({ fromStep: 2, toStep: 4, tempoBpm: 48 });
    expect(plan.targetBpm).toBe(48);
    plan.wholeAgain();
    expect(plan.targetBpm).toBe(92);
    expect(plan.practice).toBeNull();
  });
});

describe('the words of a report', () => {
  const choice = { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 } as const;
  const notes = buildExercise(choice).steps.map(({ step, beat, notes: [note] }) => ({
    timeSec: 1 + 0.75 * beat + (step === 4 ? 0.09 : 0),
    midi: note!.midi,
    cents: 0,
    levelDb: -20,
    confidence: 0.95,
    releaseSec: 1.4 + 0.75 * beat,
  }));
  const language: { locale: Locale } = { locale: { language: 'de', naming: 'german' } };
  const devices = {
    analyst: {
      analyse: (...[, asked, options]: Parameters<Devices['analyst']['analyse']>) =>
        Promise.resolve(assessHeard({ ...heard, notes }, asked, options)),
      cancel: () => undefined,
      close: () => undefined,
    },
    locale: () => language.locale,
  };

  it('are in the language of the page, and change with it without another listening', async () => {
    const { currentAttempt, plan } = rig(devices);
    plan.choose(choice);
    await currentAttempt.open(file);
    const { told: now } = currentAttempt.attempt!;
    if (now.kind !== 'report') throw new Error(now.kind);
    const { words } = now.report;
    expect(words.verdict).toMatch(/^Jeder Ton richtig\. Der Untersatz aufwärts zu C kommt/);
    expect(tellWords(words, language.locale).verdict).toBe(words.verdict);
    const english = tellWords(words, { language: 'en', naming: 'letters' });
    expect(english.verdict).toMatch(/^Every note right\. The crossing comes late going up to C/);
  });
});
