import type { Assessment, ExerciseChoice } from '../../engine/index.ts';
import type { Microphone } from '../../io/microphone/index.ts';
import type { Bundled, Devices, MicrophoneName } from './devices.ts';
import { foundAgain } from './found-again.ts';
import { EXAMPLE, goesBy, habit, meantWith } from './goes-by.ts';
import { Journal } from './journal.svelte.ts';
import { KnownPiano } from './known-piano.ts';
import { ButtonTake, leftByButton, RECORDED } from './laid-aside.ts';
import { toldAgain, toldOf } from './phases.ts';
import type { Attempt, Failure, Phase, Reported, Told } from './phases.ts';
import type { Plan } from './plan.svelte.ts';
import { Player } from './player.svelte.ts';
import { versionsOf } from './retiming.ts';
import type { Sound } from './sound.ts';
import { EvenfallError, troubleOf, type Trouble } from '../../io/troubles/index.ts';
export { EXAMPLE };
export type { Bundled, Devices, MicrophoneName } from './devices.ts';
export type { Sound } from './sound.ts';

/** Where attempts come in, one at a time, and where the last one lies. */
export class CurrentAttempt {
  phase: Phase = $state.raw({ kind: 'idle' });
  attempt: Attempt | null = $state.raw(null);
  /** the name of the attempt that is in front, told or on its way; null: the exercise to be played is */
  front: string | null = $state(null);
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
  readonly #piano: KnownPiano;
  /** under what names opened files are kept */
  readonly #ids = new WeakMap<Sound, string>();
  #take: ButtonTake | null = null;
  /** counts what was begun, so that an answer that comes after a cancel is told from the one waited for */
  #turn = 0;

  constructor(devices: Devices, plan: Plan, journal = new Journal(null)) {
    this.#devices = devices;
    this.#plan = plan;
    this.#journal = journal;
    this.#piano = new KnownPiano(devices.piano);
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
    this.#take = new ButtonTake(microphone, this.#devices.unfinished, this.#plan.aim);
    this.phase = { kind: 'recording', microphone };
  }

  async stop(): Promise<void> {
    if (this.phase.kind !== 'recording' || this.#take === null) return;
    const turn = this.#begin({ kind: 'reading', name: RECORDED });
    const sound = await this.#take.stop();
    if (turn !== this.#turn) return this.#letGo();
    this.#piano.recorded(sound);
    const assessment = await this.#listen(sound, this.#chosen);
    if (assessment !== null) this.#piano.learnFrom(sound, assessment);
  }

  /** `id`: under which it is kept, in a `group` of such as were opened together; left out: of its own. Null: nothing came of it. */
  async open(
    file: Blob & { readonly name: string },
    id = this.#newId(),
    group = id,
  ): Promise<Assessment | null> {
    const choice = this.#plan.isOwn ? this.#chosen : null;
    void this.#devices.opened?.keep({ id, group, name: file.name, file, choice, report: null });
    return this.#read(id, file.name, () => file.arrayBuffer(), choice);
  }

  async openBundled(bundled: Bundled): Promise<void> {
    this.#plan.showExample(bundled.choice, bundled.targetBpm);
    await this.#read(EXAMPLE, bundled.name, bundled.load, bundled.choice);
  }

  /** Brings an attempt to the front by its name, as it was told; one that was not told is listened to. */
  async show(id: string): Promise<void> {
    if (id === this.front || this.phase.kind === 'ready' || this.phase.kind === 'recording') return;
    if (id === this.attempt?.id) return void (this.front = id);
    const before = this.front;
    const turn = this.#begin({ kind: 'reading', name: '' });
    this.front = id;
    try {
      const found = await foundAgain(id, this.#journal, this.#devices);
      if (turn !== this.#turn) return;
      if (found === null) throw new EvenfallError({ trouble: 'attempt-gone' });
      const { sound, report, choice } = found;
      this.#ids.set(sound, id);
      if (report === null) await this.#listen(sound, choice);
      else this.#show(id, sound, toldAgain(report));
    } catch (error) {
      if (turn === this.#turn) this.#fail('file', troubleOf(error), before);
    }
  }

  /** The exercise to be played comes to the front; the last attempt stays where it is. */
  fold(): void {
    this.attempt?.player.stop();
    this.front = null;
  }

  /** What a page that was closed in the middle of a recording left behind is kept and told. */
  async recover(): Promise<void> {
    for (const { sound, aim, forget } of await leftByButton(this.#devices.unfinished)) {
      const known = await this.#journal.holds(sound);
      if (!known) await this.#journal.keep(sound, aim);
      await forget();
      if (!known) await this.#listen(sound, aim.choice);
    }
  }

  /** Listens to the last attempt again as another exercise. */
  async listenAs(choice: ExerciseChoice | null): Promise<void> {
    const sound = this.attempt?.sound ?? this.trouble?.sound;
    if (sound) await this.#listen(sound, choice, true);
  }

  /** Puts the last attempt into the journal: an opened file that is the player's own. */
  async adopt(): Promise<void> {
    if (this.attempt === null) return;
    const { sound, told, id, player } = this.attempt;
    const { choice, targetBpm } = this.#plan;
    const intention = meantWith(told, this.#plan, choice);
    const kept = await this.#journal.keep(sound, { choice, targetBpm, intention });
    await this.#journal.complete(kept, told);
    if (this.attempt?.id !== id) return;
    this.attempt = { id: kept, sound, told, player };
    if (this.front === id) this.front = kept;
  }

  /** Listens to a sound, e.g. one out of the journal. */
  async listenTo(sound: Sound, choice: ExerciseChoice | null, asChosen = false): Promise<void> {
    this.front = this.#idOf(sound);
    await this.#listen(sound, choice, asChosen);
  }

  /** Leaves whatever is going on; the last attempt stays. */
  cancel(): void {
    if (this.phase.kind === 'ready' || this.phase.kind === 'recording') this.phase.microphone.close();
    if (this.phase.kind === 'listening') this.#devices.analyst.cancel();
    this.#letGo();
    this.#begin({ kind: 'idle' });
    if (this.front !== null) this.front = this.attempt?.id ?? null;
  }

  get #chosen(): ExerciseChoice | null {
    return this.#plan.recognise ? null : this.#plan.choice;
  }

  #begin(phase: Phase): number {
    this.trouble = null;
    this.phase = phase;
    return (this.#turn += 1);
  }

  /** `front`: what was in front before, where nothing came of what is there now */
  #fail(what: Failure['what'], why: Trouble, front = this.front, sound: Sound | null = null): void {
    this.phase = { kind: 'idle' };
    this.trouble = { what, why, sound };
    this.front = front;
  }

  /** A recording that is kept elsewhere, or thrown away. */
  #letGo(): void {
    this.#take?.end();
    this.#take = null;
  }

  #newId(): string {
    return this.#devices.opened?.newId() ?? `page-${this.#turn}`;
  }

  #idOf(sound: Sound): string {
    return this.#journal.nameOf(sound) ?? this.#ids.get(sound) ?? this.#newId();
  }

  async #microphoneGone(microphone: Microphone): Promise<void> {
    const { phase } = this;
    if (phase.kind === 'recording' && phase.microphone === microphone) await this.stop();
    else if (phase.kind === 'ready' && phase.microphone === microphone) {
      microphone.close();
      this.#fail('microphone-gone', { trouble: 'connect-again' });
    }
  }

  async #read(
    id: string,
    name: string,
    load: () => Promise<ArrayBuffer>,
    choice: ExerciseChoice | null,
  ): Promise<Assessment | null> {
    this.attempt?.player.stop();
    const before = this.front;
    const turn = this.#begin({ kind: 'reading', name });
    this.front = id;
    try {
      const decoded = await this.#devices.decode(await load(), name);
      if (turn !== this.#turn) return null;
      const sound: Sound = { ...decoded, name, recordedHere: false };
      this.#ids.set(sound, id);
      return await this.#listen(sound, choice);
    } catch (error) {
      void this.#devices.opened?.forget(id);
      if (turn === this.#turn) this.#fail('file', troubleOf(error), before);
      return null;
    }
  }

  /** `asChosen`: somebody has said what it was; nothing else is measured in its place. Null: nothing came of it. */
  async #listen(sound: Sound, choice: ExerciseChoice | null, asChosen = false): Promise<Assessment | null> {
    const { name } = sound;
    const turn = this.#begin({ kind: 'listening', name, share: 0 });
    const { targetBpm } = this.#plan;
    const again = this.attempt?.sound === sound && this.attempt.told.kind === 'report' && this.attempt;
    const intention = again ? meantWith(again.told, this.#plan, choice) : this.#plan.intentionFor(choice);
    const aim = { choice, targetBpm, intention };
    // What was recorded is stored before it is analysed: nothing that goes wrong after that loses it.
    const kept = sound.recordedHere ? await this.#journal.keep(sound, aim) : null;
    if (kept !== null) this.#letGo();
    const id = kept ?? this.#idOf(sound);
    if (turn === this.#turn) this.front = id;
    const common = await goesBy(this.#journal, sound, aim, kept, this.#devices);
    const hands = kept === null ? await habit(this.#journal, choice, this.reported) : {};
    const fingerings = this.#plan.fingerings.kept;
    const options = { ...common, ...hands, asChosen, fingerings, ...this.#piano.of(sound) };
    if (turn !== this.#turn) return null;
    try {
      const assessment = await this.#devices.analyst.analyse(sound, choice, options, (share) => {
        if (turn === this.#turn) this.phase = { kind: 'listening', name, share };
      });
      if (turn !== this.#turn) return null;
      if (!sound.recordedHere) this.#piano.learnFrom(sound, assessment);
      if (assessment.kind === 'report') void this.#devices.opened?.tell(id, assessment.report, choice);
      // The example never takes the place of a choice.
      if (id !== EXAMPLE || !this.#plan.isOwn) this.#plan.measured(assessment);
      this.#show(id, sound, toldOf(assessment));
      if (kept !== null) await this.#journal.complete(kept, assessment);
      return assessment;
    } catch (error) {
      if (turn === this.#turn) this.#fail('analysis', troubleOf(error), this.front, sound);
      return null;
    }
  }

  #show(id: string, sound: Sound, told: Told): void {
    this.attempt?.player.close();
    const versions = told.kind === 'report' ? versionsOf(told.report, told.exercise) : null;
    const player = new Player(this.#devices.createPlayback(sound), this.#devices.eachFrame, versions);
    this.attempt = { id, sound, told, player };
    this.phase = { kind: 'idle' };
    if (told.kind === 'report') {
      const others = this.reported.filter((one) => one.id !== id);
      this.reported = [...others, { id, name: sound.name, report: told.report }];
    }
  }
}
