export { openLiveEar } from './live.ts';
export type { LiveListening } from './live.ts';
import type { Assessment, AudioInput, ExerciseChoice, ReportOptions } from '../../engine/index.ts';
import type { AnalysisReply, AnalysisRequest } from './messages.ts';

/** Why an analysis gave no result: it was called off, or the engine failed (a fault of ours). */
export class AnalysisError extends Error {
  override readonly name = 'AnalysisError';
  readonly reason: 'cancelled' | 'failed';

  constructor(reason: 'cancelled' | 'failed', message: string) {
    super(message);
    this.reason = reason;
  }
}

/** Listens to recordings beside the page, one after the other, in the order in which they were asked for. */
export interface Analyst {
  /**
   * `choice` null: the exercise is recognised from the sound. `onProgress` gets 0..1. The sound is copied, the caller
   * keeps its own. Rejects with AnalysisError.
   */
  analyse(
    audio: AudioInput,
    choice: ExerciseChoice | null,
    options: Partial<ReportOptions>,
    onProgress?: (share: number) => void,
  ): Promise<Assessment>;
  /** Calls off everything asked for so far. */
  cancel(): void;
  close(): void;
}

interface Job {
  readonly request: AnalysisRequest;
  readonly onProgress: (share: number) => void;
  readonly resolve: (assessment: Assessment) => void;
  readonly reject: (error: AnalysisError) => void;
}

/** The worker is started with the first analysis and ended by `cancel` and `close`. */
export function createAnalyst(): Analyst {
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
  const stopAll = (error: AnalysisError): void => {
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
      if (data.kind === 'progress') return job.onProgress(data.share);
      if (data.kind === 'done') job.resolve(data.assessment);
      else job.reject(new AnalysisError('failed', data.message));
      finish(job);
    });
    started.addEventListener('error', (event) => {
      stopAll(
        new AnalysisError('failed', event.message || 'The listening part of the page could not be loaded.'),
      );
    });
    return started;
  };

  return {
    analyse: (audio, choice, options, onProgress = () => undefined) =>
      new Promise((resolve, reject) => {
        const request: AnalysisRequest = { id: nextId++, audio, choice, options };
        jobs = [...jobs, { request, onProgress, resolve, reject }];
        if (jobs.length === 1) next();
      }),
    cancel: () => stopAll(new AnalysisError('cancelled', 'The analysis was called off.')),
    close: () => stopAll(new AnalysisError('cancelled', 'The page was closed.')),
  };
}
