/**
 * What each section of the gallery is held to: its folder is what the program makes of it today, and its plan is cut
 * again from the file by the second route. The sections are dealt out to a few test files, so that they run side by side.
 */
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { GALLERY, type GalleryEntry } from "../../gallery/sections.ts";
import { filesOfGallery, GALLERY_PLANS } from "../../scripts/gallery-files.ts";
import { examine, type Finding } from "../second-route/recut-by-polygons.ts";
import { STILL_FOUND } from "./still-found.ts";

/** Number of test files that share the gallery. */
const SHARES = 4;

/** Holds every section of one share, counted from 0. */
export function holdShare(share: number): void {
  for (const { id, ...entry } of shareOf(share)) {
    const folder = new URL(`${id}/`, GALLERY_PLANS);
    const still = STILL_FOUND[id] ?? [];

    describe(id, () => {
      test("is committed as it is made today, byte for byte (`npm run gallery` renews it)", () => {
        const { files } = filesOfGallery({ id, ...entry });
        expect(readdirSync(folder).sort()).toEqual([...files.keys()].sort());
        const changed = [...files].filter(([file, text]) => stored(folder, file) !== text);
        expect(changed.map(([file]) => file)).toEqual([]);
      });

      let found: readonly Finding[] | null = null;
      const findings = (): readonly Finding[] => {
        found ??= examine(JSON.parse(stored(folder, "plan.json")));
        return found;
      };

      test("is cut again by the second route, which finds nothing, known failures apart", () => {
        expect(findings().filter(({ rule }) => !still.includes(rule))).toEqual([]);
      });

      for (const rule of still)
        test.fails(`still found by the second route: ${rule}`, () => {
          expect(findings().filter((finding) => finding.rule === rule)).toEqual([]);
        });
    });
  }
}

function stored(folder: URL, file: string): string {
  return readFileSync(new URL(file, folder), "utf8");
}

/** Longest plans first and dealt to and fro, so that the shares take about as long as each other. */
function shareOf(share: number): readonly GalleryEntry[] {
  const bySize = GALLERY.map((entry) => ({ entry, bytes: sizeOfPlan(entry.id) })).sort(
    (a, b) => b.bytes - a.bytes,
  );
  return bySize
    .filter((_, i) => {
      const place = i % (2 * SHARES);
      return share === (place < SHARES ? place : 2 * SHARES - 1 - place);
    })
    .map(({ entry }) => entry);
}

function sizeOfPlan(id: string): number {
  const plan = new URL(`${id}/plan.json`, GALLERY_PLANS);
  return existsSync(plan) ? statSync(plan).size : 0;
}
