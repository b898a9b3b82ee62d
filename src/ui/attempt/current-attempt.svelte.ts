import { mergeHands } from '../../engine/index.ts';
import type {
  AssessOptions,
  Assessment,
  ExerciseChoice,
  Intention,
  HandsAlone,
  Report,
} from '../../engine/index.ts';
import type { Microphone } from '../../io/microphone/index.ts';
import type { Bundled, Devices, MicrophoneName } from './devices.ts';
import { Journal } from './journal.svelte.ts';
import type { Plan } from './plan.svelte.ts';
import { Player } from './player.svelte.ts';
import { versionsOf } from './retiming.ts';
import { soundLostSec } from './sound.ts';
import type { Sound } from './sound.ts';
import { troubleOf } from '../../io/troubles/index.ts';
import type { Trouble } from '../../io/troubles/index.ts';

export type { Bundled, Devices, MicrophoneName } from './devices.ts';
export type { Sound } from './sound.ts';

export type Phase =
  | { readonly kind: 'idle' }
  /** the microphone is explained, nothing is asked for yet */
  | { readonly kind: 'explaining' }
  | { readonly kind: 'opening' }
  | { readonly kind: 'ready'; readonly microphone: Microphone }
  | { readonly kind: 'recording'; readonly microphone: Microphone }
  | { readonly kind: 'reading'; readonly name: string }
  | { readonly kind: 'listening'; readonly name: string; readonly share: number };

/** Something that did not work: what, why, and the sound where there is any: nothing that was recorded is lost. */
export interface Failure {
  readonly what: 'microphone' | 'microphone-gone' | 'file' | 'analysis';
  readonly why: Trouble;
  readonly sound: Sound | null;
}

/** An attempt that was listened to. */
export interface Attempt {
  readonly sound: Sound;
  readonly assessment: Assessment;
  readonly player: Player;
}

/** An attempt of this page with its report. */
export interface Reported {
  readonly sound: Sound;
  readonly report: Report;
}

/** Where attempts come in, one at a time, and where the last one lies. */
export class CurrentAttempt {
  phase: Phase = $state.raw({ kind: 'idle' });
  attempt: Attempt | null = $state.raw(null);
  /** every attempt of this page that came to a report, oldest first */
  reported: readonly Reported[] = $state.raw([]);
  trouble: Failure | null = $state.raw(null);
  /** known once one has been opened: browsers tell no names before */
  microphones: readonly MicrophoneName[] = $state.raw([]);
  /** null: the system's choice */
  deviceId: string | null = $state(null);
  readonly #devices: Devices;
  readonly #plan: Plan;
  readonly #journal: Journal;
  #microphoneKnown = false;
  /** the name of the example, once it has been opened */
  #example: string | null = null;
  /** what was recorded last, at the piano that stands here: one out of the journal may be of another */
  #recorded: Sound | null = null;
  /** what the files opened here taught of hands alone */
  #ofFiles: HandsAlone | null = null;
  /** counts what was begun, so that an answer that comes after a cancel is told from the one waited for */
  #turn = 0;

  constructor(devices: Devices, plan: Plan, journal = new Journal(null)) {
    this.#devices = devices;
    this.#plan = plan;
    this.#journal = journal;
  }

  get busy(): boolean {
    return this.phase.kind !== 'idle' && this.phase.kind !== 'explaining';
  }

  /** The first time, what the microphone is for is said before the browser asks. */
  async record(): Promise<void> {
    this.attempt?.player.stop();
    if (this.#microphoneKnown) await this.openMicrophone();
    else this.phase = { kind: 'explaining' };
  }

  async openMicrophone(): Promise<void> {
    const turn = this.#begin({ kind: 'opening' });
    try {
      const microphone = await this.#devices.openMicrophone(this.deviceId);
      if (turn !== this.#turn) return microphone.close();
      microphone.onEnded(() => void this.#microphoneGone(microphone));
      const again = this.#microphoneKnown;
      this.#microphoneKnown = true;
      this.phase = { kind: 'ready', microphone };
      this.microphones = await this.#devices.listMicrophones().catch(() => []);
      if (again && turn === this.#turn) this.start();
    } catch (error) {
      if (turn === this.#turn) this.#fail('microphone', troubleOf(error));
    }
  }

  /** Changes to another microphone before the recording starts. */
  async useMicrophone(deviceId: string): Promise<void> {
    if (this.phase.kind !== 'ready') return;
    this.phase.microphone.close();
    this.deviceId = deviceId;
    this.#microphoneKnown = false;
    await this.openMicrophone();
  }

  start(): void {
    if (this.phase.kind !== 'ready') return;
    const { microphone } = this.phase;
    microphone.start();
    this.phase = { kind: 'recording', microphone };
  }

  async stop(): Promise<void> {
    if (this.phase.kind !== 'recording') return;
    const { microphone } = this.phase;
    const name = 'your recording';
    const turn = this.#begin({ kind: 'reading', name });
    const { channels, sampleRateHz, processing: remarks } = await microphone.stop();
    microphone.close();
    if (turn !== this.#turn) return;
    this.#recorded = {
      name,
      recordedHere: true,
      device: microphone.deviceLabel,
      channels,
      sampleRateHz,
      remarks,
    };
    await this.#listen(this.#recorded, this.#chosen);
    if (this.attempt?.sound === this.#recorded) this.#devices.piano?.learnFrom(this.attempt.assessment);
  }

  async open(file: File): Promise<void> {
    await this.#read(file.name, () => file.arrayBuffer(), this.#plan.isOwn ? this.#chosen : null);
  }

  async openBundled(bundled: Bundled): Promise<void> {
    this.#plan.showExample(bundled.choice, bundled.targetBpm);
    this.#example = bundled.name;
    await this.#read(bundled.name, bundled.load, bundled.choice);
  }

  /** Listens to the last attempt again as another exercise. */
  async listenAs(choice: ExerciseChoice | null): Promise<void> {
    const sound = this.attempt?.sound ?? this.trouble?.sound;
    if (sound) await this.#listen(sound, choice, true);
  }

  /** Puts the last attempt into the journal: an opened file that is the player's own. */
  async adopt(): Promise<void> {
    if (this.attempt === null) return;
    const { sound, assessment } = this.attempt;
    const { choice, targetBpm } = this.#plan;
    const intention = this.#intentionOf(sound, choice);
    await this.#journal.complete(
      await this.#journal.keep(sound, { choice, targetBpm, intention }),
      assessment,
    );
  }

  /** Listens to a sound, e.g. one out of the journal. */
  async listenTo(sound: Sound, choice: ExerciseChoice | null, asChosen = false): Promise<void> {
    await this.#listen(sound, choice, asChosen);
  }

  /** Leaves whatever is going on; the last attempt stays. */
  cancel(): void {
    if (this.phase.kind === 'ready' || this.phase.kind === 'recording') this.phase.microphone.close();
    if (this.phase.kind === 'listening') this.#devices.analyst.cancel();
    this.#begin({ kind: 'idle' });
  }

  dismissTrouble(): void {
    this.trouble = null;
  }

  get #chosen(): ExerciseChoice | null {
    return this.#plan.recognise ? null : this.#plan.choice;
  }

  /** What was meant with the last attempt stays meant, whatever is planned since. */
  #intentionOf(sound: Sound, choice: ExerciseChoice | null): Intention | null {
    const told = this.attempt?.sound === sound ? this.attempt.assessment : null;
    const meant = told?.kind === 'report' ? (told.report.practised?.intention ?? null) : this.#plan.intention;
    return meant === null || this.#plan.intentionFor(choice) === null ? null : meant;
  }

  #begin(phase: Phase): number {
    this.trouble = null;
    this.phase = phase;
    this.#turn += 1;
    return this.#turn;
  }

  #fail(what: Failure['what'], why: Trouble, sound: Sound | null = null): void {
    this.phase = { kind: 'idle' };
    this.trouble = { what, why, sound };
  }

  async #microphoneGone(microphone: Microphone): Promise<void> {
    const { phase } = this;
    if (phase.kind === 'recording' && phase.microphone === microphone) await this.stop();
    else if (phase.kind === 'ready' && phase.microphone === microphone) {
      microphone.close();
      this.#fail('microphone-gone', { trouble: 'connect-again' });
    }
  }

  async #read(name: string, load: () => Promise<ArrayBuffer>, choice: ExerciseChoice | null): Promise<void> {
    this.attempt?.player.stop();
    const turn = this.#begin({ kind: 'reading', name });
    try {
      const decoded = await this.#devices.decode(await load(), name);
      if (turn === this.#turn) await this.#listen({ ...decoded, name, recordedHere: false }, choice);
    } catch (error) {
      if (turn === this.#turn) this.#fail('file', troubleOf(error));
    }
  }

  /** `asChosen`: somebody has said what it was; nothing else is measured in its place */
  async #listen(sound: Sound, choice: ExerciseChoice | null, asChosen = false): Promise<void> {
    const { name } = sound;
    const turn = this.#begin({ kind: 'listening', name, share: 0 });
    const { targetBpm } = this.#plan;
    const intention = this.#intentionOf(sound, choice);
    const criteria = this.#journal.standards.criteriaFor(choice);
    // What was recorded is stored before it is analysed: nothing that goes wrong after that loses it.
    const kept = sound.recordedHere
      ? await this.#journal.keep(sound, { choice, targetBpm, intention })
      : null;
    const past = kept === null ? {} : await this.#journal.past(choice, kept);
    const locale = this.#devices.locale?.();
    const options = {
      targetBpm,
      ...past,
      soundLostSec: soundLostSec(sound),
      criteria,
      asChosen,
      intention,
      learnHands: true,
      ...this.#knownFor(sound),
      ...(locale !== undefined && { locale }),
    };
    if (turn !== this.#turn) return;
    try {
      const assessment = await this.#devices.analyst.analyse(sound, choice, options, (share) => {
        if (turn === this.#turn) this.phase = { kind: 'listening', name, share };
      });
      if (turn !== this.#turn) return;
      if (!sound.recordedHere && assessment.kind === 'report')
        this.#ofFiles = mergeHands(this.#ofFiles, assessment.handsAlone ?? null);
      this.#show(sound, assessment);
      if (kept !== null) await this.#journal.complete(kept, assessment);
    } catch (error) {
      if (turn === this.#turn) this.#fail('analysis', troubleOf(error), sound);
    }
  }

  /** The piano here is presumed of what is recorded now; elsewhere hands alone are compared with, if they prove to be of it. */
  #knownFor(sound: Sound): Partial<AssessOptions> {
    const piano = this.#devices.piano?.known ?? null;
    if (sound === this.#recorded) return { piano };
    return { alone: sound.recordedHere ? (piano?.alone ?? null) : this.#ofFiles };
  }

  #show(sound: Sound, assessment: Assessment): void {
    this.attempt?.player.close();
    const versions =
      assessment.kind === 'report' ? versionsOf(assessment.report, assessment.alignment.exercise) : null;
    const player = new Player(this.#devices.createPlayback(sound), this.#devices.eachFrame, versions);
    if (assessment.kind === 'report' && !(sound.name === this.#example && this.#plan.isOwn)) {
      // Another exercise than chosen is measured, but the choice stays.
      this.#plan.adopt(assessment.alignment.chosen ?? assessment.alignment.exercise.choice);
    }
    // What cannot be recognised must be chosen: the choice is shown again.
    if (assessment.kind === 'not-recognised') this.#plan.recognise = false;
    this.attempt = { sound, assessment, player };
    this.phase = { kind: 'idle' };
    if (assessment.kind === 'report') {
      const others = this.reported.filter((one) => one.sound !== sound);
      this.reported = [...others, { sound, report: assessment.report }];
    }
  }
}
