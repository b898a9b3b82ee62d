import type { ExerciseChoice, LiveEvent, LiveOptions } from '../../../engine/index.ts';
import type { MicrophoneTrouble } from '../../../io/microphone/index.ts';
import { recall, remember } from '../../../io/settings/index.ts';
import type { MicrophoneName } from '../../attempt/current-attempt.svelte.ts';
import { openEar, type LiveMicrophoneEar } from './ear.ts';
import type { Aim } from '../../attempt/journal.svelte.ts';
import { withEvent, type LiveNote } from './live-notes.ts';
import { OwnSounds } from './own-sounds.ts';
import type { Plan, Practice } from '../../attempt/plan.svelte.ts';
import type { Sound } from '../../attempt/sound.ts';
import type { SittingDevices } from './devices.ts';
import { endingSilenceSec, readSittingSettings, type SittingSettings } from './settings.ts';
import { analyseAttempt, expectedOf, meantWith, planAfter, type Face, type FinishedAttempt } from './told.ts';
import { isByButton, soundOf, UnderWay } from './under-way.ts';
import { troubleOf, type Trouble } from '../../../io/troubles/index.ts';

/** Listening at the piano without hands: attempts begin and end by themselves, one after the other. */
export class Sitting {
  phase: 'off' | 'opening' | 'on' = $state('off');
  settings: SittingSettings = $state.raw(readSittingSettings(null));
  microphones: readonly MicrophoneName[] = $state.raw([]);
  /** the notes of the attempt in progress, guesses among them */
  notes: readonly LiveNote[] = $state.raw([]);
  /** the notes of the attempt being worked out */
  closed: readonly LiveNote[] = $state.raw([]);
  attemptUnderWay = $state(false);
  /** the exercise is not over, and nothing has come for a while */
  waits = $state(false);
  /** what was played last was no exercise */
  passedOver = $state(false);
  working = $state(0);
  attempts = $state(0);
  told: FinishedAttempt | null = $state.raw(null);
  /** what is wrong or was; null: nothing */
  trouble: Trouble | null = $state.raw(null);
  /** listening stands still until the page is touched or the device comes back */
  halted = $state(false);
  level: Extract<LiveEvent, { kind: 'level' }> | null = $state.raw(null);
  readonly plan: Plan;
  readonly own: OwnSounds;
  readonly #devices: SittingDevices;
  #ear: LiveMicrophoneEar | null = null;
  #underWay: UnderWay | null = null;
  /** counts openings, so that one that comes late is told from the one waited for */
  #turn = 0;

  constructor(devices: SittingDevices, plan: Plan) {
    this.#devices = devices;
    this.plan = plan;
    this.settings = readSittingSettings(recall(devices.settings, 'stand'));
    this.own = new OwnSounds(devices.pulse, devices.speech);
    devices.onDevicesChange(() => void this.#deviceCameBack());
    devices.screen.onSeen((seen) => {
      if (!seen) this.#underWay?.layAside(true);
    });
  }

  get face(): Face {
    // A guess or a single note, which a knock or a key touched in passing may bring about, turns nothing over.
    if (this.attemptUnderWay || this.notes.filter(({ final }) => final).length > 1) return 'listening';
    if (this.working > 0) return 'working';
    return this.told === null ? 'waiting' : 'told';
  }

  /** beats a minute of the pulse; null: none is aimed at */
  get bpm(): number | null {
    return this.plan.targetBpm;
  }

  change(part: Partial<SittingSettings>): void {
    this.settings = { ...this.settings, ...part };
    remember(this.#devices.settings, 'stand', this.settings);
  }

  /** From one touch on, everything goes by itself. */
  async listen(): Promise<void> {
    if (this.phase !== 'off') return;
    this.phase = 'opening';
    this.trouble = null;
    this.attempts = 0;
    this.told = null;
    // Called while the touch is being answered: browsers open no loudspeaker otherwise.
    this.own.open(this.settings, this.bpm);
    this.#devices.screen.keepAwake();
    if (await this.#open()) this.microphones = await this.#devices.listMicrophones().catch(() => []);
    else this.#close();
  }

  /** Ends the listening; an attempt under way is ended with it, and analysed. */
  async stop(): Promise<void> {
    this.#turn += 1;
    const ear = this.#ear;
    if (ear !== null) await this.#leave(ear);
    this.#close();
  }

  /** Goes on after the device's sleep. */
  async resume(): Promise<void> {
    await this.#ear?.resume();
    if (this.#ear === null && this.phase === 'on') await this.#open();
  }

  /** What a page that was closed in the middle of an attempt left behind is kept and told. */
  async recover(): Promise<void> {
    const left = await this.#devices.unfinished.recover((about) => !isByButton(about)).catch(() => []);
    for (const { id, channels, sampleRateHz, about, forget } of left) {
      const processing = [{ notice: 'page-closed' } as const];
      const sound = soundOf({ channels, sampleRateHz, processing }, '', id);
      const empty = (channels[0]?.length ?? 0) === 0;
      if (!empty && !(await this.#devices.journal.holds(sound)))
        await this.#tell(sound, about as Aim, () => void forget());
      else await forget();
    }
  }

  /** Tells the last attempt again, as another exercise; who lets it be recognised goes on so. */
  async tellAs(choice: ExerciseChoice): Promise<void> {
    const { told } = this;
    if (told === null) return;
    const aim = { choice, targetBpm: this.bpm, intention: meantWith(told.assessment, this.plan, choice) };
    const assessment = await analyseAttempt(this.#devices, told.sound, aim, told.id, true);
    if (this.told !== told) return;
    if (this.plan.recognise) this.plan.adopt(choice);
    else this.choose(choice);
    this.told = { ...told, assessment };
    await this.#devices.journal.complete(told.id, assessment);
  }

  /** From here on this one is played. */
  choose(choice: ExerciseChoice): void {
    this.plan.choose(choice);
    this.#ear?.expect(expectedOf(this.plan));
  }

  /** From here on what a next step proposes is played; its report makes room. */
  setUp(choice: ExerciseChoice, practice: Practice): void {
    this.plan.choose(choice);
    this.plan.setUp(practice);
    this.#ear?.expect(expectedOf(this.plan));
    this.own.keepTempo(this.bpm);
    this.told = null;
  }

  async #open(): Promise<boolean> {
    const turn = (this.#turn += 1);
    try {
      const microphone = await this.#devices.openMicrophone(this.settings.deviceId);
      if (turn !== this.#turn) {
        microphone.close();
        return false;
      }
      const options: Partial<LiveOptions> = {
        expected: expectedOf(this.plan),
        own: this.#devices.own?.() ?? [],
        silenceSec: endingSilenceSec(this.settings, this.bpm),
        piano: this.#devices.piano.known,
      };
      const ear = openEar(microphone, this.#devices.openLiveListener, options, {
        onEvent: (event) => this.#hear(event),
        onTrouble: (trouble) => void this.#suffer(trouble),
        onFailure: (trouble) => void this.#lose(trouble),
      });
      this.#ear = ear;
      this.own.attach(ear);
      this.phase = 'on';
      this.halted = false;
      return true;
    } catch (error) {
      if (turn === this.#turn) this.trouble = troubleOf(error);
      return false;
    }
  }

  /** Lets the microphone go; what it has heard of an attempt is hers. */
  async #leave(ear: LiveMicrophoneEar): Promise<void> {
    await ear.stop();
    // The ear ends an attempt under way by itself; where it could not any more, it is ended here.
    if (this.#underWay !== null) this.#finish(this.#underWay.startSec, ear.nowSec());
    if (this.#ear === ear) this.#ear = null;
    this.notes = [];
  }

  #close(): void {
    this.phase = 'off';
    this.halted = false;
    this.level = null;
    this.own.close();
    this.#devices.screen.letSleep();
  }

  #hear(event: LiveEvent): void {
    this.notes = withEvent(this.notes, event);
    switch (event.kind) {
      case 'level':
        this.level = event;
        this.own.tick();
        this.#underWay?.layAside(false);
        return;
      case 'started':
        this.#begin(event.cutSec);
        return;
      case 'waits':
        this.waits = true;
        return;
      case 'ended':
        this.#finish(event.startSec, event.endSec);
        return;
      case 'let-go':
        this.#letGo(event.timeSec);
        return;
      default:
        if (event.kind === 'struck' && event.final) this.waits = false;
        this.own.playing(this.notes.length > 0);
    }
  }

  #begin(startSec: number): void {
    const ear = this.#ear;
    this.passedOver = false;
    this.waits = false;
    this.#underWay?.beginAnew(startSec);
    if (ear === null || this.#underWay !== null) return;
    this.trouble = null;
    const { aim } = this.plan;
    const keeping = this.#devices.unfinished.begin(ear.sampleRateHz, aim);
    this.#underWay = new UnderWay(ear, startSec, aim, keeping);
    this.#underWay.layAside(true);
    this.attemptUnderWay = true;
  }

  #finish(startSec: number, endSec: number): void {
    const attempt = this.#underWay;
    if (attempt === null) return;
    this.#over();
    this.closed = this.notes.filter((note) => note.timeSec <= endSec);
    this.notes = this.notes.filter((note) => note.timeSec > endSec);
    const sound = attempt.end(startSec, endSec);
    this.attempts += 1;
    this.own.rest();
    void this.#tell(sound, attempt.aim, () => attempt.kept());
  }

  #over(): void {
    this.#underWay = null;
    this.attemptUnderWay = false;
    this.waits = false;
  }

  #letGo(endSec: number): void {
    this.#underWay?.letGo();
    this.#over();
    this.passedOver = true;
    this.notes = this.notes.filter((note) => note.timeSec > endSec);
    this.own.playing(false);
  }

  /** Kept first, then analysed, then told. */
  async #tell(sound: Sound, aim: Aim, kept: () => void): Promise<void> {
    const number = this.attempts;
    this.working += 1;
    try {
      const { journal, piano } = this.#devices;
      const id = await journal.keep(sound, aim);
      kept();
      const assessment = await analyseAttempt(this.#devices, sound, aim, id);
      this.told = { sound, assessment, id, number };
      this.own.keepTempo(planAfter(this.plan, assessment));
      if (this.phase === 'on' && this.settings.speak) void this.own.say(this.#devices.spoken(assessment));
      piano.learnFrom(assessment);
      if (piano.known !== null) this.#ear?.usePiano(piano.known);
      await journal.complete(id, assessment);
    } catch (error) {
      this.trouble = { trouble: 'not-worked-out', because: troubleOf(error) };
    } finally {
      this.working -= 1;
    }
  }

  async #suffer({ kind, trouble, lostSec }: MicrophoneTrouble): Promise<void> {
    this.trouble = trouble;
    if (lostSec > 0) this.#underWay?.remark({ notice: 'sound-lost', lostSec });
    if (kind === 'gone') await this.#lose(trouble);
    else this.halted = kind === 'silenced' || kind === 'asleep';
  }

  /** Nothing comes in any more: what came before is told, and the device is waited for. */
  async #lose(trouble: Trouble): Promise<void> {
    this.halted = true;
    this.trouble = trouble;
    const ear = this.#ear;
    if (ear !== null) await this.#leave(ear);
  }

  async #deviceCameBack(): Promise<void> {
    if (this.phase !== 'on' || this.#ear !== null) return;
    if (await this.#open()) this.trouble = { trouble: 'microphone-back' };
  }
}
