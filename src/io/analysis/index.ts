export { openLiveListener } from './live.ts';
export type { LiveListening } from './live.ts';
import type { AssessOptions, Assessment, AudioInput, ExerciseChoice, RoomCheck } from '../../engine/index.ts';
import { EvenfallError } from '../troubles/index.ts';
import type { AnalysisReply, AnalysisRequest } from './messages.ts';

/** Listens to recordings beside the page, one after the other, in the order in which they were asked for. */
export interface Analyst {
  /**
   * `choice` null: the exercise is recognised from the sound. `onProgress` gets 0..1. The sound is copied, the caller
   * keeps its own. Rejects with EvenfallError.
   */
  analyse(
    audio: AudioInput,
    choice: ExerciseChoice | null,
    options: Partial<AssessOptions>,
    onProgress?: (share: number) => void,
  ): Promise<Assessment>;
  /** Calls off everything asked for so far. */
  cancel(): void;
  close(): void;
}

/** An analyst who also looks at the room. */
export interface RoomAnalyst extends Analyst {
  /** Three seconds of silence, and the sound of a low, a middle and a high note → what the place is like. Rejects with EvenfallError. */
  checkRoom(silence: AudioInput, played: AudioInput): Promise<RoomCheck>;
}

interface Job {
  readonly request: AnalysisRequest;
  readonly onReply: (reply: AnalysisReply) => void;
  readonly reject: (error: EvenfallError) => void;
}

/** The worker is started with the first analysis and ended by `cancel` and `close`. */
export function createAnalyst(): RoomAnalyst {
  let worker: Worker | null = null;
  let nextId = 0;
  /** the first one is at work */
  let jobs: readonly Job[] = [];

  const next = (): void => {
    const job = jobs[0];
    if (job === undefined) return;
    worker ??= start();
    worker.postMessage(job.request);
  };
  const finish = (job: Job): void => {
    jobs = jobs.filter((other) => other !== job);
    next();
  };
  const stopAll = (error: EvenfallError): void => {
    const stopped = jobs;
    jobs = [];
    worker?.terminate();
    worker = null;
    for (const job of stopped) job.reject(error);
  };
  const start = (): Worker => {
    const started = new Worker(new URL('./analyst.worker.ts', import.meta.url), { type: 'module' });
    started.addEventListener('message', ({ data }: MessageEvent<AnalysisReply>) => {
      const job = jobs.find(({ request }) => request.id === data.id);
      if (job === undefined) return;
      if (data.kind === 'failed') job.reject(new EvenfallError(data.trouble));
      else job.onReply(data);
      if (data.kind !== 'progress') finish(job);
    });
    started.addEventListener('error', () => {
      stopAll(new EvenfallError({ trouble: 'listening-not-loaded' }));
    });
    return started;
  };

  const ask = (job: Job): void => {
    jobs = [...jobs, job];
    if (jobs.length === 1) next();
  };

  return {
    analyse: (audio, choice, options, onProgress = () => undefined) =>
      new Promise((resolve, reject) => {
        const onReply = (reply: AnalysisReply): void => {
          if (reply.kind === 'progress') onProgress(reply.share);
          if (reply.kind === 'done') resolve(reply.assessment);
        };
        ask({ request: { kind: 'attempt', id: nextId++, audio, choice, options }, onReply, reject });
      }),
    checkRoom: (silence, played) =>
      new Promise((resolve, reject) => {
        const onReply = (reply: AnalysisReply): void => {
          if (reply.kind === 'checked') resolve(reply.room);
        };
        ask({ request: { kind: 'room', id: nextId++, silence, played }, onReply, reject });
      }),
    cancel: () => stopAll(new EvenfallError({ trouble: 'analysis-called-off' })),
    close: () => stopAll(new EvenfallError({ trouble: 'page-closed' })),
  };
}
