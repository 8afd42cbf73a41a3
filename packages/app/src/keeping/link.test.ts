import { deflateSync } from "fflate";
import { writeJob } from "mouldwright/job";
import { describe, expect, test } from "vitest";
import { inflated, LINK_LIMITS, packJob, unpackJob } from "./link.ts";
import { bringsJob } from "./link-start.ts";
import { plinth } from "./testing/jobs.ts";

/** A link of any text, as a stranger may make it. */
function linkOf(text: string | Uint8Array): string {
  const bytes = typeof text === "string" ? new TextEncoder().encode(text) : text;
  return `#job=${Buffer.from(deflateSync(bytes, { level: 9 })).toString("base64url")}`;
}

const troubleOf = (fragment: string): unknown => {
  const unpacked = unpackJob(fragment);
  return unpacked.kind === "trouble" ? unpacked.trouble.kind : unpacked;
};

describe("a link", () => {
  test("carries the whole job in letters that every program passes on", () => {
    const job = plinth({ name: "Plinth ⅜″ “harbour”", notes: "für Åse\nand 船" });
    const packed = packJob(job);
    if (packed.kind !== "link") throw new Error(packed.kind);
    expect(packed.fragment).toMatch(/^#job=[\w-]+$/);
    expect(unpackJob(packed.fragment)).toEqual({ kind: "job", job, warnings: [] });
  });

  test("is told from the name of a room", () => {
    expect(bringsJob("#job=abc")).toBe(true);
    expect(bringsJob("#jobs")).toBe(false);
  });

  test("a job too large for a link is sent as a file", () => {
    // Notes that cannot be pressed: letters of a mixing sequence.
    let state = 1;
    const notes = Array.from({ length: 20_000 }, () => {
      state = (state * 48_271) % 2_147_483_647;
      return String.fromCharCode(0x4e00 + (state % 20_000));
    }).join("");
    const job = plinth({
      notes,
      section: {
        parts: Array.from({ length: 200 }, (_, index) => ({
          kind: "fillet",
          widthMm: 1,
          name: `${notes.slice(index * 90, index * 90 + 190)}`,
        })),
      },
    });
    expect(packJob(job).kind).toBe("too long");
  });
});

describe("a hostile link", () => {
  test("a bomb is given up while it is unpacked", () => {
    const bomb = deflateSync(new Uint8Array(40_000_000), { level: 9 });
    expect(bomb.length).toBeLessThan(LINK_LIMITS.mostLetters);
    expect(inflated(bomb)).toBe("too large");
    expect(troubleOf(`#job=${Buffer.from(bomb).toString("base64url")}`)).toBe("too large");
  });

  test("no more than a little above the limit is ever held", () => {
    const bomb = deflateSync(new Uint8Array(4_000_000), { level: 9 });
    const most = 10_000;
    expect(inflated(bomb, most)).toBe("too large");
    expect(inflated(deflateSync(new Uint8Array(most)), most)).toHaveLength(most);
  });

  test("too many letters are not even unpacked", () => {
    expect(troubleOf(`#job=${"A".repeat(LINK_LIMITS.mostLetters + 1)}`)).toBe("too large");
  });

  test.each(["#job=", "#job=%3Cscript%3E", "#job=A", "#job=AAAA", "#job=____", "#jobs", ""])(
    "%s is broken",
    (fragment) => {
      expect(troubleOf(fragment)).toBe("broken");
    },
  );

  test("one that was cut off on the way is broken, wherever it was cut", () => {
    const packed = packJob(plinth());
    if (packed.kind !== "link") throw new Error(packed.kind);
    for (let end = 5; end < packed.fragment.length - 1; end += 1) {
      expect(troubleOf(packed.fragment.slice(0, end))).toBe("broken");
    }
  });

  test("bytes that are no text are broken", () => {
    expect(troubleOf(linkOf(new Uint8Array([0xff, 0xfe, 0x80])))).toBe("broken");
  });

  test.each(["__proto__", "constructor", "prototype", "toString", "hasOwnProperty"])(
    "a key %s is refused wherever it stands, and changes nothing",
    (key) => {
      const planted = JSON.stringify({ planted: true });
      for (const text of [
        writeJob(plinth()).replace('"name"', `"${key}": ${planted}, "name"`),
        writeJob(plinth()).replace('"widthMm": 40', `"${key}": ${planted}, "widthMm": 40`),
        writeJob(plinth()).replace('"kind": "ovolo"', `"${key}": ${planted}, "kind": "ovolo"`),
      ]) {
        expect(text).toContain(planted);
        expect(troubleOf(linkOf(text))).toBe("no job");
      }
      expect(Reflect.get({}, "planted")).toBeUndefined();
    },
  );

  test("nesting without end is refused", () => {
    expect(troubleOf(linkOf("[".repeat(400_000)))).toBe("no job");
    expect(troubleOf(linkOf('{"a":'.repeat(900)))).toBe("no job");
  });

  test("a job of a newer version is refused by its version", () => {
    const unpacked = unpackJob(linkOf(writeJob(plinth()).replace('"version": 1', '"version": 2')));
    expect(unpacked).toMatchObject({
      trouble: { kind: "no job", troubles: [{ code: "file-version-newer" }] },
    });
  });
});
