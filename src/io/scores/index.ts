export { encodePassages, PASSAGES } from './passages.ts';
export type { KeptPassages } from './kept.ts';
export type { Bars } from './types.ts';
import type { ExerciseChoice } from '../../engine/index.ts';
import { openArchive } from '../archive/index.ts';
import { plainName } from '../check/index.ts';
import { cutPassage } from './cut.ts';
import { fromMidi } from './from-midi.ts';
import { fromPassages } from './passages.ts';
import { textOf } from './text.ts';
import { ScoreError } from './types.ts';
import type { Bars, WholeScore } from './types.ts';

const MB = 2 ** 20;
/** The text of an opera is larger; two pages of piano music have some 0.3 MB. */
const MOST_MB = 20;
const MXL_LIMITS = {
  mostFileBytes: MOST_MB * MB,
  mostMembers: 200,
  mostMemberBytes: MOST_MB * MB,
  mostUnpackedBytes: 2 * MOST_MB * MB,
};

/**
 * A file of music, known by its contents: MusicXML, plain or packed; a Standard MIDI File; ABC; or passages of ours → the passages in it,
 * one at least. `bars`: which of them, where it is longer than a passage may be. What the file says is believed of nothing but music: it is
 * read wholly or refused with ScoreError or ArchiveError, which say why.
 */
export async function openPassages(file: File, bars: Bars | null = null): Promise<readonly ExerciseChoice[]> {
  if (file.size === 0) throw new ScoreError({ trouble: 'file-empty' });
  if (file.size > MOST_MB * MB) throw new ScoreError({ trouble: 'music-too-large', mostMb: MOST_MB });
  // What has no title is called by its file.
  const name = plainName(file.name).replace(/\.\w{1,9}$/, '');
  const cut = (score: WholeScore): ExerciseChoice =>
    cutPassage(score.title.trim() === '' ? { ...score, title: name } : score, bars);
  const bytes = new Uint8Array(await file.arrayBuffer());
  const head = new TextDecoder('latin1').decode(bytes.subarray(0, 4));
  if (head === 'MThd') return [cut(fromMidi(bytes))];
  if (head === 'PK\u0003\u0004') return [cut(await fromPacked(file))];
  const text = textOf(bytes);
  const begins = text.replace(/^[\uFEFF\s]+/, '');
  if (begins.startsWith('{')) return fromPassages(bytes);
  if (begins.startsWith('<') && /<score-(partwise|timewise)/.test(text)) return [cut(await xml(text))];
  if (/^X:/m.test(text) && /^K:/m.test(text)) {
    const { fromAbc } = await import('./from-score.ts');
    return fromAbc(text).map(cut);
  }
  throw new ScoreError({ trouble: 'no-music' });
}

async function xml(text: string): Promise<WholeScore> {
  const { fromMusicXml } = await import('./from-score.ts');
  return fromMusicXml(text);
}

/** Packed MusicXML says in META-INF/container.xml which of its files is the score (MusicXML 4.0, "Compressed .mxl files"). */
async function fromPacked(file: Blob): Promise<WholeScore> {
  const members = await openArchive(file, MXL_LIMITS);
  const container = members.find(({ name }) => name === 'META-INF/container.xml');
  const said = container === undefined ? '' : textOf(await container.read());
  const [, path] = /<rootfile[^>]*full-path=["']([^"']+)["']/.exec(said) ?? [];
  const score =
    members.find(({ name }) => name === path) ??
    members.find(({ name }) => /\.(musicxml|xml)$/i.test(name) && !name.startsWith('META-INF/'));
  if (score === undefined) throw new ScoreError({ trouble: 'no-music' });
  const text = textOf(await score.read());
  if (!/<score-(partwise|timewise)/.test(text)) throw new ScoreError({ trouble: 'no-music' });
  return xml(text);
}
