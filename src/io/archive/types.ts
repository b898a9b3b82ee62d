import type { Trouble } from '../troubles/index.ts';

/** How much of an archive is read; what goes beyond is refused before anything is unpacked. */
export interface ArchiveLimits {
  /** the file itself */
  readonly mostFileBytes: number;
  readonly mostMembers: number;
  /** one member unpacked */
  readonly mostMemberBytes: number;
  /** all members unpacked */
  readonly mostUnpackedBytes: number;
}

/** A file in an archive. Its name is safe to show and holds no way out of the archive. */
export interface ArchiveMember {
  readonly name: string;
  /** unpacked, as it says */
  readonly sizeBytes: number;
  /** Its first bytes, so many at most, to tell by what it is; unchecked. Throws ArchiveError where they cannot be had. */
  readonly head: (bytes: number) => Promise<Uint8Array<ArrayBuffer>>;
  /** Its bytes, unpacked no further than they say and checked; throws ArchiveError where they are not what they say. */
  readonly read: () => Promise<Uint8Array<ArrayBuffer>>;
}

/** What can be had of a zip, and what cannot, with its reason. */
export interface Collection {
  readonly members: readonly ArchiveMember[];
  readonly refused: readonly { readonly name: string; readonly reason: Trouble }[];
}
