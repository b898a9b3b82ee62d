/** Runs the engine beside the page. One analysis at a time; the page ends it by ending the worker. */
import type { AnalysisReply, AnalysisRequest } from './messages.ts';
import { analyseInPieces } from './pieces.ts';

const reply = (message: AnalysisReply): void => self.postMessage(message);

self.addEventListener('message', (event: MessageEvent<AnalysisRequest>) => {
  const { id, audio, choice, options } = event.data;
  analyseInPieces(audio, choice, options, (share) => reply({ id, kind: 'progress', share })).then(
    (assessment) => reply({ id, kind: 'done', assessment }),
    (error: unknown) =>
      reply({ id, kind: 'failed', message: error instanceof Error ? error.message : String(error) }),
  );
});
