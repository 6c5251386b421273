const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file or folder",
  ENOTDIR: "a part of its path is a file and not a folder",
  EISDIR: "it is a folder",
  EACCES: "you are not allowed to: look at who owns the file and its folder, or choose another folder",
  EPERM: "you are not allowed to, or another program holds it: close it there, or choose another folder",
  EROFS: "its disk can only be read: choose another folder",
  ENOSPC: "the disk is full: make room, or choose another disk",
  EDQUOT: "your share of the disk is used up: make room, or choose another disk",
  EFBIG: "it is larger than a file may be here: choose another disk",
  EBUSY: "another program holds it: close it there and try again",
  ETXTBSY: "another program holds it: close it there and try again",
  EMFILE: "too many files are open: close some programs and try again",
  EIO: "the disk does not answer as it should: try another one",
  ENAMETOOLONG: "the name is too long: choose a shorter one",
};

/** Why the system would not read or write, in words; its own where we have none. */
export function systemReason(fault: unknown): string {
  const { code, message } = fault as NodeJS.ErrnoException;
  return REASONS[code ?? ""] ?? message;
}
