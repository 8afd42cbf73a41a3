import {
  DRAWING_LAMP,
  type Hanging,
  type Lamp,
  type SectionInLight,
  type Stretch,
  sectionInLight,
} from "mouldwright/light";
import { cataloguedTrouble, fine, type LengthUnit, type Outcome, SAME_POINT_MM } from "mouldwright/measure";
import type { Section } from "mouldwright/section";
import { drawLight, hangingWords, lampWords } from "mouldwright/sheets";
import { type OptionKinds, readChoice, wrongValue } from "./arguments.ts";
import { type Command, note, readPlacement, refuse, troublesOfRefusal } from "./command.ts";
import { deliver, FIT_OPTIONS, type Figures, figuresFor } from "./fit-answer.ts";
import { readAngle, readPercent } from "./fit-options.ts";
import { type Placement, readSectionInput, unitOf } from "./input.ts";
import { onlyName } from "./names.ts";
import { readSpring } from "./section-placing.ts";

export const LIGHT_OPTIONS: OptionKinds = {
  height: { value: true, sample: "--height 45" },
  direction: { value: true, sample: "--direction 45" },
  ambient: { value: true, sample: "--ambient 25" },
  run: { value: true, sample: "--run upright" },
  first: { value: true, sample: "--first far" },
  spring: { value: true, sample: "--spring 38" },
  from: { value: true, sample: "--from ceiling" },
  against: { value: true, sample: "--against other.json" },
  stick: { value: true, sample: "--stick 42x18" },
  at: { value: true, sample: "--at 0,0" },
  ...FIT_OPTIONS,
};

/** A section that was read, in the light. */
interface Version {
  readonly file: string;
  readonly name: string;
  readonly lit: SectionInLight;
  /** Where its spring comes from. */
  readonly said: string;
  readonly unit: LengthUnit;
}

/** `mouldwright light SECTION`: light, shade and shadow along a moulding, as it will be seen from the front. */
export async function lightCommand(command: Command): Promise<number> {
  const { given } = command;
  const wrong = (outcome: Outcome<unknown> & { readonly ok: false }): number =>
    refuse(command, { file: "", troubles: troublesOfRefusal(outcome) });
  const path = onlyName(given, "a section file or a job");
  if (!path.ok) return wrong(path);
  const lamp = readLamp(command);
  if (!lamp.ok) return wrong(lamp);
  const placement = readPlacement(command);
  if (!placement.ok) return refuse(command, placement);
  const first = await readVersion(command, path.value, lamp.value, placement.value);
  if (typeof first === "number") return first;
  const otherPath = given.values.get("against");
  const other =
    otherPath === undefined
      ? null
      : // The stick and the place that are said belong to the first.
        await readVersion(command, otherPath, lamp.value, { unit: command.askedUnit });
  if (typeof other === "number") return other;
  const versions = named([first, ...(other === null ? [] : [other])]);
  const { unit } = first;
  const write = withoutSides(figuresFor(unit));
  return deliver(command, {
    unit,
    file: path.value,
    numbers: { lamp: lampNumbers(first.lit), versions: versions.map(versionNumbers) },
    lines: [
      lampWords(first.lit),
      "",
      ...versions.flatMap((version) => [...versionLines(version, write), ""]),
      ...(versions.length < 2 ? [] : [comparison(versions, write), ""]),
    ],
    warnings: [],
    assumed: [cataloguedTrouble("light-one-far-lamp", "", {})],
    cautions: [],
    drawing: () => drawLight(versions, { unit }),
    inputs: versions.map(({ file }) => file),
  });
}

/** A rule's "light" and "full" would be taken for light: left out here. */
function withoutSides(write: Figures): Figures {
  return { ...write, length: (lengthMm) => write.length(lengthMm).replace(/ (?:light|full)$/, "") };
}

const PERCENT = 100;

function readLamp({ given }: Command): Outcome<Lamp> {
  const height = readAngle(given, "height");
  if (!height.ok) return height;
  const direction = readAngle(given, "direction");
  if (!direction.ok) return direction;
  const ambient = readPercent(given, "ambient");
  if (!ambient.ok) return ambient;
  return fine({
    heightDeg: height.value ?? DRAWING_LAMP.heightDeg,
    directionDeg: direction.value ?? DRAWING_LAMP.directionDeg,
    ambientRatio: ambient.value === undefined ? DRAWING_LAMP.ambientRatio : ambient.value / PERCENT,
  });
}

/** One section in the light; an exit code where it cannot be read or hung so. */
async function readVersion(
  command: Command,
  path: string,
  lamp: Lamp,
  placement: Placement,
): Promise<Version | number> {
  const input = await readSectionInput(path, placement);
  if (!input.ok) return refuse(command, input);
  const { section, job } = input.value;
  const unit = unitOf(command.askedUnit, job);
  note(command, path, input.warnings, unit);
  const hung = readHanging(command, section);
  if (!hung.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(hung) });
  const lit = sectionInLight(section, lamp, hung.value.hanging);
  if (!lit.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(lit) });
  return { file: path, name: section.name || path, lit: lit.value, said: hung.value.said, unit };
}

function readHanging(
  command: Command,
  section: Section,
): Outcome<{ readonly hanging: Hanging; readonly said: string }> {
  const { given } = command;
  const run = readChoice(given, "run", ["level", "upright"]);
  if (!run.ok) return run;
  const first = readChoice(given, "first", ["gauge", "far"]);
  if (!first.ok) return first;
  const firstEdge = first.value === "far" ? "far edge" : "gauge edge";
  if (run.value === "upright") {
    const typed = given.values.get("spring");
    if (typed !== undefined) return wrongValue("spring", typed, "it only with --run level");
    return fine({ hanging: { run: "upright", firstEdge, springFromWallDeg: 0 }, said: "" });
  }
  const spring = readSpring(command, section, firstEdge === "gauge edge" ? "far edge" : "gauge edge");
  if (!spring.ok) return spring;
  const { springFromWallDeg } = spring.value.placing;
  return fine({
    hanging: { run: "level", firstEdge, springFromWallDeg },
    // A back that stands flat says so already.
    said: springFromWallDeg === 0 ? "" : spring.value.said,
  });
}

/** Two of one name are told apart by their files. */
function named(versions: readonly Version[]): readonly Version[] {
  const [first, other] = versions;
  if (first === undefined || other === undefined || first.name !== other.name) return versions;
  return versions.map((version) => ({ ...version, name: `${version.name} (${version.file})` }));
}

function lampNumbers({ lamp, trueHeightDeg, direction }: SectionInLight) {
  return { ...lamp, trueHeightDeg, direction };
}

function versionNumbers({ name, lit }: Version): Readonly<Record<string, unknown>> {
  const { hanging, widthMm, projectionMm, shares, onWall, stretches } = lit;
  return {
    name,
    hanging,
    widthMm,
    projectionMm,
    lightMm: shares.light,
    shadeMm: shares.shade,
    shadowMm: shares.shadow,
    shadowOnWall: onWall,
    stretches: stretches.map(stretchNumbers),
  };
}

function stretchNumbers(stretch: Stretch): Readonly<Record<string, unknown>> {
  const { state, isSeen, partName, startMm, endMm, showsMm, brightness, fromOnStick, toOnStick } = stretch;
  return {
    state,
    isSeen,
    partName,
    startMm,
    endMm,
    showsMm,
    brightness,
    fromOnStickMm: [fromOnStick.x, fromOnStick.y],
    toOnStickMm: [toOnStick.x, toOnStick.y],
  };
}

const STATE_WORDS = { light: "in the light", shade: "turned from the light", shadow: "in shadow" } as const;
const STATE_SHARES = {
  light: "lie in the light",
  shade: "are turned from it",
  shadow: "lie in shadow",
} as const;

function versionLines({ name, lit, said }: Version, write: Figures): readonly string[] {
  const { shares, widthMm, onWall, hanging } = lit;
  const [first, last] = hanging.run === "level" ? ["above", "below"] : ["to the left of", "to the right of"];
  const edge = hanging.run === "level" ? "from the top" : "from the left";
  const reaches = [
    ...(onWall.beyondFirstMm > SAME_POINT_MM
      ? [`${write.length(onWall.beyondFirstMm)} of wall ${first} it`]
      : []),
    ...(onWall.beyondLastMm > SAME_POINT_MM
      ? [`${write.length(onWall.beyondLastMm)} of wall ${last} it`]
      : []),
  ];
  const sharesSaid = (["light", "shade", "shadow"] as const)
    .filter((state) => shares[state] > SAME_POINT_MM)
    .map((state) => `${write.length(shares[state])} ${STATE_SHARES[state]}`);
  return [
    `${write.text(name)}: ${hangingWords(lit)}${said === "" ? "" : ` (${said})`}.`,
    `Of ${write.length(widthMm)} that show ${write.list(sharesSaid)}.${reaches.length === 0 ? "" : ` Its shadow falls on ${reaches.join(" and on ")}.`}`,
    ...lit.stretches
      .filter(({ showsMm }) => showsMm > SAME_POINT_MM)
      .map((stretch) => stretchWords(stretch, edge, write)),
  ];
}

function stretchWords(stretch: Stretch, edge: string, write: Figures): string {
  const { startMm, endMm, state, brightness, partName } = stretch;
  const part = partName === "" ? "" : `${write.text(partName)}, `;
  return `  ${write.length(startMm)} to ${write.length(endMm)} ${edge}: ${part}${STATE_WORDS[state]}, ${brightnessWords(brightness)}`;
}

/** Brightness in hundredths of a white face square on to all the light. */
function brightnessWords({ from, to, most }: Stretch["brightness"]): string {
  const [start, end, top] = [from, to, most].map((ratio) => Math.round(ratio * PERCENT)) as [
    number,
    number,
    number,
  ];
  if (start === end && end === top) return `${start} % bright`;
  return top > start && top > end ? `${start} to ${top} to ${end} % bright` : `${start} to ${end} % bright`;
}

function comparison(versions: readonly Version[], write: Figures): string {
  const [first, other] = versions as readonly [Version, Version];
  const change = (state: keyof typeof STATE_WORDS): string => {
    const more = other.lit.shares[state] - first.lit.shares[state];
    if (Math.abs(more) <= SAME_POINT_MM) return `as much ${STATE_WORDS[state]}`;
    return `${write.length(Math.abs(more))} ${more > 0 ? "more" : "less"} ${STATE_WORDS[state]}`;
  };
  return `Against the first, ${write.text(other.name)} shows ${change("light")}, ${change("shade")} and ${change("shadow")}.`;
}
