import { randomBytes } from "node:crypto";
import { constants } from "node:fs";
import {
  access,
  link,
  lstat,
  mkdir,
  open,
  readdir,
  realpath,
  rename,
  rm,
  stat,
  unlink,
} from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import {
  cataloguedTrouble,
  fine,
  type Outcome,
  refused,
  type Trouble,
  type TroubleCode,
  trouble,
} from "mouldwright/measure";
import { reasonOf, systemCode } from "./read-file.ts";

export interface FileToWrite {
  readonly path: string;
  /** Text, or the bytes of a file that is none. */
  readonly text: string | Uint8Array;
}

export interface Overwriting {
  /** Whether a file that already stands there may be replaced. */
  readonly force: boolean;
}

/**
 * Null if a file could be written at `path` as things stand, else the trouble: `path-exists`, `path-is-folder`,
 * `folder-missing`, `path-not-writable`. Asked before the planning, so that an hour's wait does not end in a no.
 */
export async function refusalToWrite(path: string, overwriting: Overwriting): Promise<Trouble | null> {
  const folder = dirname(resolve(path));
  const standing = await lstat(path).catch(() => null);
  if (standing?.isDirectory()) return cataloguedTrouble("path-is-folder", path, {});
  // A device or a pipe is nobody's plan, whatever force is allowed.
  if (standing !== null && !standing.isFile() && !standing.isSymbolicLink()) {
    return cataloguedTrouble("path-not-a-file", path, {});
  }
  if (standing !== null && !overwriting.force) return cataloguedTrouble("path-exists", path, {});
  const folderState = await stat(folder).catch(() => null);
  if (folderState === null) return cataloguedTrouble("folder-missing", path, { folder });
  if (!folderState.isDirectory()) return cataloguedTrouble("folder-missing", path, { folder });
  return access(folder, constants.W_OK).then(
    () => null,
    (error: unknown) => cataloguedTrouble("path-not-writable", path, reasonOf(error)),
  );
}

/**
 * Null if pictures could be put into the folder, which need not exist yet; else `path-not-a-folder`,
 * `path-exists` (a picture with this `stem` lies there), `folder-missing` (no parent) or `path-not-writable`.
 */
export async function refusalToFill(
  folder: string,
  stem: string,
  overwriting: Overwriting,
): Promise<Trouble | null> {
  const standing = await stat(folder).catch(() => null);
  if (standing === null) {
    let above = dirname(resolve(folder));
    while ((await stat(above).catch(() => null)) === null && dirname(above) !== above) above = dirname(above);
    return access(above, constants.W_OK).then(
      () => null,
      (error: unknown) => cataloguedTrouble("path-not-writable", folder, reasonOf(error)),
    );
  }
  if (!standing.isDirectory()) return cataloguedTrouble("path-not-a-folder", folder, {});
  try {
    await access(folder, constants.W_OK);
    const taken = (await readdir(folder)).find((name) => isPictureOf(stem, name));
    return taken !== undefined && !overwriting.force
      ? cataloguedTrouble("path-exists", join(folder, taken), {})
      : null;
  } catch (error) {
    return cataloguedTrouble("path-not-writable", folder, reasonOf(error));
  }
}

/** Whether two names lead to one file that exists, by links or by spelling. */
export async function isSameFile(a: string, b: string): Promise<boolean> {
  const [stateA, stateB] = await Promise.all([a, b].map((path) => stat(path).catch(() => null)));
  return stateA != null && stateB != null && stateA.ino === stateB.ino && stateA.dev === stateB.dev;
}

/** Whether a file name is one that `pictureNames` gives for this stem. */
function isPictureOf(stem: string, name: string): boolean {
  return (
    [`${stem}-strip.svg`, `${stem}-section.svg`].includes(name) ||
    (name.startsWith(`${stem}-cut-`) && /-cut-\d+\.svg$/.test(name))
  );
}

/** Whether a path is the place of one of the pictures that go into `folder`. */
export function isPictureIn(folder: string, stem: string, path: string): boolean {
  return dirname(resolve(path)) === resolve(folder) && isPictureOf(stem, basename(path));
}

/**
 * Writes all the files, or none: each first whole into a hidden file beside its place, then, when all are safe
 * on the disk, renamed into place. Without `force` a file that has appeared meanwhile is left alone.
 * Folders that are missing are made. An interrupt before the renaming leaves nothing behind; once the renaming
 * has begun it is finished. Troubles: `path-exists`, `disk-full`, `path-not-writable`, `interrupted`.
 */
export async function writeAll(
  files: readonly FileToWrite[],
  overwriting: Overwriting,
  interrupted: AbortSignal,
): Promise<Outcome<readonly string[]>> {
  const made: string[] = [];
  const waiting: { readonly from: string; readonly to: string }[] = [];
  const placed: string[] = [];
  let at = files[0]?.path ?? "";
  try {
    for (const file of files) {
      if (interrupted.aborted) return refused(cataloguedTrouble("interrupted", "", {}));
      at = file.path;
      const firstMade = await mkdir(dirname(resolve(file.path)), { recursive: true });
      if (firstMade !== undefined) made.push(firstMade);
      // Through a link the file it leads to is written, not the link replaced.
      const to = await realpath(file.path).catch(() => resolve(file.path));
      const from = join(dirname(to), `.${randomBytes(8).toString("hex")}.part`);
      waiting.push({ from, to });
      await writeWhole(from, file.text);
    }
    if (interrupted.aborted) return refused(cataloguedTrouble("interrupted", "", {}));
    for (const { from, to } of waiting) {
      at = files[placed.length]!.path;
      if (overwriting.force) await rename(from, to);
      else await renameToFreePlace(from, to);
      placed.push(to);
    }
    return fine(files.map((file) => file.path));
  } catch (error) {
    // What was put into a free place is ours to take back; what replaced another file is not.
    if (!overwriting.force) await Promise.all(placed.map((path) => rm(path, { force: true })));
    return refused(trouble(writingCode(error), at, reasonOf(error)));
  } finally {
    await Promise.all(waiting.map(({ from }) => rm(from, { force: true })));
    if (placed.length < files.length) {
      for (const folder of made.reverse()) await removeIfEmpty(folder);
    }
  }
}

async function writeWhole(path: string, text: string | Uint8Array): Promise<void> {
  const file = await open(path, "wx");
  try {
    await file.writeFile(text, "utf8");
    await file.sync();
  } finally {
    await file.close();
  }
}

/** A second name for the file fails where one stands already, which a rename would not. */
async function renameToFreePlace(from: string, to: string): Promise<void> {
  try {
    await link(from, to);
    await unlink(from);
  } catch (error) {
    if (!["EPERM", "ENOTSUP", "EOPNOTSUPP", "ENOSYS", "EXDEV", "EMLINK"].includes(systemCode(error)))
      throw error;
    // Some disks (memory cards among them) know no second names.
    if ((await lstat(to).catch(() => null)) !== null) {
      throw Object.assign(new Error("the place is taken"), { code: "EEXIST" });
    }
    await rename(from, to);
  }
}

async function removeIfEmpty(folder: string): Promise<void> {
  const inside = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => null);
  if (inside?.every((entry) => entry.isDirectory())) await rm(folder, { recursive: true, force: true });
}

function writingCode(error: unknown): TroubleCode {
  switch (systemCode(error)) {
    case "EEXIST":
      return "path-exists";
    case "ENOSPC":
    case "EDQUOT":
      return "disk-full";
    default:
      return "path-not-writable";
  }
}

/**
 * Removes the pictures that an earlier, longer plan of the same stem left in the folder, since a card with cuts of
 * two plans would be followed; `current` holds the paths to keep. Gives how many went.
 */
export async function removeStalePictures(
  folder: string,
  stem: string,
  current: ReadonlySet<string>,
): Promise<number> {
  const stale = (await readdir(folder)).filter(
    (name) => isPictureOf(stem, name) && !current.has(join(folder, name)),
  );
  await Promise.all(stale.map((name) => rm(join(folder, name), { force: true })));
  return stale.length;
}
