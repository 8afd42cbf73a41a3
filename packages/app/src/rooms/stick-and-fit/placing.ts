/** How the section hangs on its wall: as the maker says, else by its own spring bevels. */
import { type Placing, type Spring, springBevels, springFrom } from "mouldwright/making";
import { fine, type Outcome } from "mouldwright/measure";
import type { Section } from "mouldwright/section";
import type { FitChoices } from "./fit-choices.ts";

export interface FoundPlacing {
  readonly placing: Placing;
  readonly spring: Spring;
  /** Where the spring comes from. */
  readonly from: "as said" | "its bevel at the wall" | "its bevel at the ceiling" | "no bevel";
}

const SQUARE_DEG = 90;

/**
 * The spring of the bevel at the wall's edge, else what the other bevel leaves of a right angle, else flat against the
 * wall; what the maker says goes before all of them. Refused: a spring that is none.
 */
export function placingOf(
  section: Section,
  { springFromWallDeg, wallEdge }: Pick<FitChoices, "springFromWallDeg" | "wallEdge">,
): Outcome<FoundPlacing> {
  const { bevels } = springBevels(section);
  const atWall = bevels.find(({ edge }) => edge === wallEdge);
  const atCeiling = bevels.find(({ edge, fromBackDeg }) => edge !== wallEdge && fromBackDeg <= SQUARE_DEG);
  const [found, from] = ((): readonly [number, FoundPlacing["from"]] => {
    if (springFromWallDeg !== null) return [springFromWallDeg, "as said"];
    if (atWall !== undefined) return [atWall.fromBackDeg, "its bevel at the wall"];
    if (atCeiling !== undefined) return [SQUARE_DEG - atCeiling.fromBackDeg, "its bevel at the ceiling"];
    return [0, "no bevel"];
  })();
  const spring = springFrom("wall", found);
  if (!spring.ok) return spring;
  const { fromWallDeg } = spring.value;
  return fine({ placing: { springFromWallDeg: fromWallDeg, wallEdge }, spring: spring.value, from });
}
