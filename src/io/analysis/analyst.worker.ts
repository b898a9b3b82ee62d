/** Runs the engine beside the page. One job at a time; the page ends it by ending the worker. */
import { troubleOf } from '../troubles/index.ts';
import { checkRoom, measureSilence } from '../../engine/index.ts';
import type { AnalysisReply, AnalysisRequest } from './messages.ts';
import { analyseInPieces } from './pieces.ts';

const reply = (message: AnalysisReply): void => self.postMessage(message);

async function answer(request: AnalysisRequest): Promise<AnalysisReply> {
  const { id } = request;
  if (request.kind === 'room')
    return { id, kind: 'checked', room: checkRoom(measureSilence(request.silence), request.played) };
  const { audio, choice, options } = request;
  const tell = (share: number): void => reply({ id, kind: 'progress', share });
  return { id, kind: 'done', assessment: await analyseInPieces(audio, choice, options, tell) };
}

self.addEventListener('message', ({ data }: MessageEvent<AnalysisRequest>) => {
  answer(data).then(reply, (error: unknown) =>
    reply({
      id: data.id,
      kind: 'failed',
      trouble: troubleOf(error),
    }),
  );
});
