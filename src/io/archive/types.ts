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
  /** Its bytes, unpacked no further than they say and checked; throws ArchiveError where they are not what they say. */
  readonly read: () => Promise<Uint8Array<ArrayBuffer>>;
}
