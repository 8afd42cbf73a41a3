/** What `--help` shows. Examples come from the chart cabinet for the harbour office. */
import { readFile } from "node:fs/promises";
import { FIT_COMMANDS, FIT_HELP, FIT_OVERVIEW } from "./fit-help.ts";

const COMMON = `  --unit in|mm         what is read and written in; mm unless a job says otherwise
  --help               this page`;

export const HELP = {
  "": `mouldwright: plans and proves the cuts of a wooden moulding with the planes on your own shelf.

  mouldwright plan     a section and a shelf of planes give a proven plan
  mouldwright recut    makes every cut of a plan again and says whether it holds
  mouldwright section  describes, checks or converts a drawing of a section
  mouldwright shelf    describes a shelf of planes
${FIT_OVERVIEW}

  mouldwright COMMAND --help   shows what a command takes
  mouldwright --version

Example, the cornice of the chart cabinet:
  mouldwright plan cornice.svg --shelf planes.json --pictures cornice-card

Ends with 0 for a whole plan (or a plan that holds), 1 if something stays uncut (or a plan
does not hold), 2 if what was given is refused, 3 if nothing could be written, 130 if interrupted.
`,
  plan: `mouldwright plan SECTION.svg|SECTION.dxf|JOB.json --shelf SHELF.json

Plans the cuts and proves them on the stick. The card for the bench is printed.

  --shelf SHELF.json   the planes on your shelf; a job may name its own
  --stick 42x18        width x thickness of the stick, if the drawing has none or another
  --at 0,0             where the section's lower left corner lies in that stick (no job)
  --tolerance 0.2mm    how far the finished face may stand from the drawing
  --out PLAN.json      also write the plan as a file, which recut proves again
  --pictures DIR       also draw every cut into this folder
  --json               print the plan file instead of the card, and nothing else
  --force              replace files that stand there already
${COMMON}

Examples, for the chart cabinet:
  mouldwright plan cornice.svg --shelf planes.json
  mouldwright plan plinth.dxf --shelf planes.json --stick "3 1/2 in x 3/4 in" --unit in
  mouldwright plan pilaster.json --out pilaster-plan.json --pictures pilaster-card
`,
  recut: `mouldwright recut PLAN.json

Makes every cut of a plan again, from the stick, and says where the plan does not hold.

${COMMON}

Example: a colleague sends the plan of the barometer case's frame:
  mouldwright recut barometer-frame.json
`,
  section: `mouldwright section describe FILE …
mouldwright section check FILE …
mouldwright section convert FILE --out OTHER.svg|OTHER.dxf

describe  its sizes, its parts with their radii, and the angle at every join
check     whether it can be planned from at all
convert   the same section as SVG or DXF, by the ending of the new name

FILE is an SVG or DXF drawing, or a job.

  --stick 42x18        width x thickness of the stick, if the drawing has none or another
  --at 0,0             where the section's lower left corner lies in that stick
  --out OTHER.dxf      where the converted drawing goes
  --force              replace a file that stands there already
${COMMON}

Examples, for the chart cabinet:
  mouldwright section describe glazing-bar.svg --unit in
  mouldwright section convert cornice.svg --out cornice.dxf
`,
  shelf: `mouldwright shelf SHELF.json

Describes the planes on a shelf, and what was assumed of them.

${COMMON}

Example:
  mouldwright shelf planes.json --unit in
`,
  ...FIT_HELP,
} as const;

export type CommandName = Exclude<keyof typeof HELP, "">;

export const COMMANDS = [
  "plan",
  "recut",
  "section",
  "shelf",
  ...FIT_COMMANDS,
] as const satisfies readonly CommandName[];

/** The version of this program, from its own package. */
export async function versionText(): Promise<string> {
  const text = await readFile(new URL("../package.json", import.meta.url), "utf8");
  const { version } = JSON.parse(text) as { readonly version: string };
  return `mouldwright ${version}\n`;
}
