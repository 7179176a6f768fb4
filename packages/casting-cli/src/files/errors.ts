/** A file or folder that cannot be read or written: one sentence, exit 1. */
export class FileError extends Error {
  constructor(text: string) {
    super(text);
    this.name = "FileError";
  }
}

/** What the system's error codes mean to someone at a bench. */
const REASONS: Record<string, string> = {
  ENOSPC: "the disk is full",
  EDQUOT: "the disk quota is used up",
  EFBIG: "the file would be larger than allowed here",
  EACCES: "permission is denied",
  EPERM: "permission is denied",
  EROFS: "the disk is read-only",
  EIO: "the disk reports an error",
  EMFILE: "too many files are open",
  ENFILE: "too many files are open",
  EXDEV: "it lies on another disk",
  ENOENT: "there is no such file or folder",
  ENOTDIR: "a part of its path is a file, not a folder",
  EISDIR: "it is a folder",
  ENAMETOOLONG: "its name is too long",
  ELOOP: "its links run in a circle",
  EEXIST: "something is already there",
  ENXIO: "it is a pipe that nothing writes into",
  EPIPE: "the other end was closed",
};

/** The reason of a system error in plain words, or its code. */
export function reason(error: unknown): string {
  const code = (error as NodeJS.ErrnoException | undefined)?.code ?? "";
  return REASONS[code] ?? (code === "" ? "the system refused" : `the system says ${code}`);
}
