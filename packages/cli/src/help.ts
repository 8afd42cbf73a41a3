/** What `--help` shows. Examples come from the chart cabinet for the harbour office. */
import { readFile } from "node:fs/promises";
import { FIT_COMMANDS, FIT_HELP, FIT_OVERVIEW } from "./fit-help.ts";
import { SHEETS_HELP } from "./sheets-help.ts";

const COMMON = `  --unit in|mm         what is read and written in; mm unless a job says otherwise
  --help               this page`;

export const HELP = {
  "": `mouldwright: plans and proves the cuts of a wooden moulding with the planes on your own shelf.

  mouldwright plan     a section and a shelf of planes give a proven plan
  mouldwright recut    makes every cut of a plan again and says whether it holds
  mouldwright section  describes, checks or converts a drawing of a section
  mouldwright shelf    describes a shelf of planes
  mouldwright sheets   the sheets for the bench as a PDF: card, templates, story stick, planes, fit
  mouldwright export   outlines and solids for other programs: SVG, DXF, STL
${FIT_OVERVIEW}

  mouldwright COMMAND --help   shows what a command takes
  mouldwright --version

Example, the cornice of the chart cabinet:
  mouldwright plan cornice.svg --shelf planes.json --pictures cornice-card

Ends with 0 for a whole plan (or a plan that holds), 1 if something stays uncut (or a plan
does not hold), 2 if what was given is refused, 3 if nothing could be written, 130 if interrupted.
`,
  plan: `mouldwright plan SECTION.svg|SECTION.dxf|JOB.json --shelf SHELF.json
mouldwright plan --from PLAN.json --after 4 [--measured MEASURED.json]

Plans the cuts and proves them on the stick. The card for the bench is printed.

  --shelf SHELF.json   the planes on your shelf; a job may name its own
  --stick 42x18        width x thickness of the stick, if the drawing has none or another
  --at 0,0             where the section's lower left corner lies in that stick (no job)
  --tolerance 0.2mm    how far the finished face may stand from the drawing
  --out PLAN.json      also write the plan as a file, which recut proves again
  --pictures DIR       also draw the finished section and every cut into this folder
  --advise             also look for the one plane to borrow or buy that would save most cuts
  --json               print the plan file instead of the card, and nothing else
  --force              replace files that stand there already

How you work; a job may say the same, and what stands here goes before it:
  --without ID,ID      planes of the shelf that are not to be used, by id or name
  --lean 45            greatest lean of a plane in the hand, 0 to 60 degrees
  --prefer planes|settings|strokes
                       what to save on where several orders would do
  --side proud|under   where the drawing cannot be met, leave wood or take it; either unless said
  --way flat|bevelled|canted
                       how the stick is held: on its back, on a bevel sawn first, in a canted jaw;
                       taken wherever the section allows it, with flat shown beside it
  --sticks 4           sticks run at each setting
  --length 1.2m        length of a stick, for the minutes
  --shaving 0.3,0.15,0.08
                       thickness of the heavy, the ordinary and the last shavings
  --gauge left|right   side of the drawing that the gauge edge lies on; left unless said
  --keep-square gauge|far|both
                       edge that stays square and untouched as long as can be, for gauge and fence
                       or because it meets something; the plan says until when it does
  --pace set=3,carry=1,stroke=4,sharpen=10,sharp=200,test=300mm,sawset=4,saw=60
                       what the minutes are reckoned with, one or more of these: minutes to set a
                       plane and to carry it on as it is to its next line, seconds for a metre of
                       stroke, minutes to sharpen an iron and metres it stays sharp for, length of
                       the test piece run first at each setting (0 for none), minutes to set a saw,
                       seconds for a metre of sawing
  --hand gauge=0.08,line=0.06,sideways=0.2,fence=0.1,saw=0.3,depth=0.15,width=0.1
                       what you keep within 95 times in 100, one or more of these: a gauge's
                       setting, a knife line, a plane guided along it, a fence set to it, a saw, the
                       depth of a cut, the width of a sole as your shelf has it
  --step 16|32|64      finest division of your inch rule; 32 unless said

From a half-done stick, or after a test piece:
  --from PLAN.json     the plan that was begun; section, shelf, tolerance are its own unless given
  --after 4            how many of its cuts are made; 0 for none
  --measured FILE      what was measured on the wood:
                       { "format": "mouldwright/measured", "version": 1,
                         "planes": { "round-3-8": { "width": "9.6 mm", "radius": 9.4 } },
                         "cuts": { "3": { "across": 0.2, "deeper": -0.1 } } }
                       planes by id, cuts by number; across to the right, deeper into the wood

  --unit in|mm         of what you type without a unit, mm unless given, and of what is shown,
                       a job's own unless given
  --help               this page

Examples, for the chart cabinet:
  mouldwright plan cornice.svg --shelf planes.json
  mouldwright plan plinth.dxf --shelf planes.json --stick "3 1/2 in x 3/4 in" --unit in
  mouldwright plan pilaster.json --out pilaster-plan.json --pictures pilaster-card
  mouldwright plan pilaster.json --without rebate-6 --sticks 4 --length 1.2m
  mouldwright plan --from pilaster-plan.json --after 4 --measured pilaster-measured.json
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

FILE is an SVG or DXF drawing, a job, or a list of points measured off an old moulding:
one point a line, across from the gauge edge and height above the back, for example 12.5; 9
(docs/files.md). It is read as the flats and arcs it was.

  --stick 42x18        width x thickness of the stick, if the drawing has none or another
  --at 0,0             where the section's lower left corner lies in that stick
  --out OTHER.dxf      where the converted drawing goes
  --force              replace a file that stands there already
${COMMON}

Examples, for the chart cabinet:
  mouldwright section describe glazing-bar.svg --unit in
  mouldwright section convert cornice.svg --out cornice.dxf
  mouldwright section convert old-cornice.csv --out old-cornice.svg
`,
  shelf: `mouldwright shelf SHELF.json

Describes the planes on a shelf, and what was assumed of them.

${COMMON}

Example:
  mouldwright shelf planes.json --unit in
`,
  ...SHEETS_HELP,
  ...FIT_HELP,
} as const;

export type CommandName = Exclude<keyof typeof HELP, "">;

export const COMMANDS = [
  "plan",
  "recut",
  "section",
  "shelf",
  "sheets",
  "export",
  ...FIT_COMMANDS,
] as const satisfies readonly CommandName[];

/** The version of this program, from its own package. */
export async function versionText(): Promise<string> {
  const text = await readFile(new URL("../package.json", import.meta.url), "utf8");
  const { version } = JSON.parse(text) as { readonly version: string };
  return `mouldwright ${version}\n`;
}
