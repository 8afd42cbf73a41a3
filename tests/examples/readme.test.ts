/** What README.md tells a reader to type does what it shows. */
import { existsSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { BASELINE, readResult } from "../../bench/results.ts";
import { FIT_COMMANDS } from "../../packages/cli/src/fit-help.ts";
import { withMeasured } from "../../scripts/readme-figures.ts";
import { commandsIn, type Ran, renewed } from "../../scripts/readme-outputs.ts";
import { withExamplesFolder } from "../../scripts/run-command.ts";

const ROOT = new URL("../../", import.meta.url);
const readme = readFileSync(new URL("README.md", ROOT), "utf8");

/** The one command whose moulding cannot be made ends with 1, as the text beside it says. */
const expectedCode = (words: readonly string[]): number =>
  words.includes("examples/impossible.json") ? 1 : 0;

describe("the commands of README.md", () => {
  const ran: { readonly words: readonly string[]; readonly ran: Ran }[] = [];
  let shown = "";
  beforeAll(() => {
    shown = withExamplesFolder((run) =>
      renewed(readme, (words) => {
        const came = run(words);
        ran.push({ words, ran: came });
        return came;
      }),
    );
  }, 120_000);

  test("the commands that planning needs and the most useful of fitting are shown and end as they should", () => {
    const shownNames = commandsIn(readme).map(([name]) => name);
    const wanted = ["plan", "recut", "section", "shelf", "mitre", "cornice", "frame", "rake"];
    expect(shownNames).toEqual(expect.arrayContaining(wanted));
    expect(ran.map(({ words, ran: { code } }) => [words.join(" "), code])).toEqual(
      commandsIn(readme).map((words) => [words.join(" "), expectedCode(words)]),
    );
  });

  test("every fitting command has its line in the page about them, and is named in the README", () => {
    const page = readFileSync(new URL("docs/fit.md", ROOT), "utf8");
    for (const command of FIT_COMMANDS) {
      expect(page, command).toMatch(new RegExp(`\\| .*\`${command} `));
      expect(readme, command).toMatch(new RegExp(`\`${command}\`|npx mouldwright ${command} `));
    }
  });

  test("print what stands below them (`npm run readme` renews it)", () => {
    expect(shown).toBe(readme);
  });
});

test("the two commands to begin with are scripts of the project, and continuous integration runs the second", () => {
  const { scripts } = JSON.parse(readFileSync(new URL("package.json", ROOT), "utf8")) as {
    scripts: Record<string, string>;
  };
  const begin = [...readme.matchAll(/^npm ci && npm (?<name>\w+)/gm)].map(({ groups }) => groups?.name ?? "");
  expect(begin).toEqual(["start", "test"]);
  for (const name of begin) expect(scripts).toHaveProperty(name);
  const named = [...readme.matchAll(/`npm run (?<name>[\w-]+)/g)].map(({ groups }) => groups?.name ?? "");
  for (const name of named) expect(scripts).toHaveProperty(name);
  expect(readFileSync(new URL(".ci/run", ROOT), "utf8")).toMatch(/^npm ci\nnpm test$/m);
});

test("the figures are those of the stored measurement", () => {
  expect(withMeasured(readme, readResult(BASELINE))).toBe(readme);
});

test.each(["README.md", "ARCHITECTURE.md", "CONTRIBUTING.md", "docs/files.md", "examples/README.md"])(
  "every link of %s leads to a file",
  (name) => {
    const page = new URL(name, ROOT);
    const links = [...readFileSync(page, "utf8").matchAll(/\]\((?<to>[^)#\s]+)/g)]
      .map(({ groups }) => groups?.to ?? "")
      .filter((to) => !/^[a-z]+:/.test(to));
    expect(links.filter((to) => !existsSync(new URL(to, page)))).toEqual([]);
  },
);
