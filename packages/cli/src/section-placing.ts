/** How a section hangs on its wall: from its own spring bevels unless the maker says otherwise. */
import { type Placing, springFrom, springToldBy, type ToldSpring, type WallEdge } from "mouldwright/making";
import { fine, type Outcome } from "mouldwright/measure";
import type { Section } from "mouldwright/section";
import { type OptionKinds, readChoice } from "./arguments.ts";
import type { Command } from "./command.ts";
import { readAngle } from "./fit-options.ts";

export const PLACING_OPTIONS: OptionKinds = {
  wall: { value: true, sample: "--wall far" },
  spring: { value: true, sample: "--spring 38" },
  from: { value: true, sample: "--from ceiling" },
};

export interface FoundPlacing {
  readonly placing: Placing;
  /** Where the spring comes from, as a maker would say it. */
  readonly said: string;
}

/**
 * `--wall gauge|far`: the edge at the wall, the far one unless said. `--spring`: as on the mitre; without it the
 * spring of the bevel at that edge, else what the other bevel leaves of a right angle, else flat against the wall.
 */
export function readPlacing(command: Command, section: Section): Outcome<FoundPlacing> {
  const wall = readChoice(command.given, "wall", ["gauge", "far"]);
  if (!wall.ok) return wall;
  return readSpring(command, section, wall.value === "gauge" ? "gauge edge" : "far edge");
}

/** `--spring` and `--from` alone, for a moulding whose edge at the wall is known. */
export function readSpring({ given }: Command, section: Section, wallEdge: WallEdge): Outcome<FoundPlacing> {
  const from = readChoice(given, "from", ["wall", "ceiling"]);
  if (!from.ok) return from;
  const asked = readAngle(given, "spring");
  if (!asked.ok) return asked;
  if (asked.value !== undefined) {
    const spring = springFrom(from.value ?? "wall", asked.value);
    if (!spring.ok) return spring;
    const placing = { springFromWallDeg: spring.value.fromWallDeg, wallEdge };
    return fine({ placing, said: "as given" });
  }
  const { springFromWallDeg, toldBy } = springToldBy(section, wallEdge);
  return fine({ placing: { springFromWallDeg, wallEdge }, said: SAID[toldBy] });
}

const SAID: Readonly<Record<ToldSpring["toldBy"], string>> = {
  "bevel at that edge": "from the bevel at that edge",
  "bevel at the other edge": "from the bevel at the other edge",
  "no bevel": "no bevel: the back stands flat against the wall",
};
