import { openAsBlob } from 'node:fs';
import { criteriaOf } from '../../engine/index.ts';
import { ArchiveError, openCollection } from '../../io/archive/index.ts';
import { DecodeError, inMemory, onDisk } from '../../io/decode/index.ts';
import { decodeBlocksInNode } from '../../io/decode/node.ts';
import { noteFault } from './fault.ts';
import { createTeller } from '../../io/sorting/progress.ts';
import { sortSound } from '../../io/sorting/sort-sound.ts';
import type { Trouble } from '../../io/troubles/index.ts';
import { keep, keptName, printOf, readKept } from './kept.ts';
import type { PileReply, PileRequest, Sorted, Source } from './types.ts';

/** Answers the requests of the command that started this process, one at a time, until it is gone. */
export function help(): void {
  const reply = (message: PileReply): void => void process.send?.(message);
  process.on('message', (request: PileRequest) => {
    sortOne(request, (share) => reply({ kind: 'progress', share })).then(
      (file) => reply({ kind: 'done', file }),
      (cause: unknown) => reply(failure(request.name, cause)),
    );
  });
  process.on('disconnect', () => process.exit());
}

async function sortOne(request: PileRequest, onProgress: (share: number) => void): Promise<Sorted> {
  const { source, name, targetBpm, evennessPercent, alone, pianosCents, own, kept } = request;
  const file = await open(source);
  const bytes = file instanceof Blob ? onDisk(file) : inMemory(new Uint8Array(file));
  const print = await printOf(bytes);
  const id = keptName(print, [kept.version, targetBpm, evennessPercent, alone, pianosCents, own]);
  const known = kept.fresh ? null : await readKept(kept.folder, id);
  if (known !== null) return known;
  const found = await sortSound(
    (take) => decodeBlocksInNode(file, name, take),
    {
      targetBpm,
      alone,
      pianoCents: pianosCents[0] ?? null,
      elsewhereCents: pianosCents.slice(1),
      own,
      criteria: criteriaOf(evennessPercent === null ? {} : { evennessPercent }),
    },
    createTeller(onProgress),
  );
  const sorted = { ...found, print };
  await keep(kept.folder, id, sorted);
  return sorted;
}

/** A file is read as it is wanted, one in an archive unpacked whole. */
async function open({ path, member }: Source): Promise<ArrayBuffer | Blob> {
  const blob = await openAsBlob(path);
  if (member === null) return blob;
  const found = (await openCollection(blob)).members.find(({ name }) => name === member);
  if (found === undefined) throw new ArchiveError({ trouble: 'zip-member-gone' });
  return (await found.read()).buffer;
}

function failure(name: string, cause: unknown): PileReply {
  const within = (of: Trouble): Trouble => ({ trouble: 'within', name, of });
  if (cause instanceof DecodeError) return { kind: 'failed', reason: 'unreadable', trouble: cause.trouble };
  if (cause instanceof ArchiveError)
    return { kind: 'failed', reason: 'unreadable', trouble: within(cause.trouble) };
  if (cause instanceof Error && 'code' in cause) {
    const of: Trouble = { trouble: 'system-refuses', code: String(cause.code) };
    return { kind: 'failed', reason: 'unreadable', trouble: within(of) };
  }
  noteFault(cause);
  return { kind: 'failed', reason: 'failed', trouble: within({ trouble: 'own-fault' }) };
}
