/** How the section hangs on its wall: as the maker says, else by its own spring bevels. */
import { type Placing, type Spring, springFrom, springToldBy, type ToldSpring } from "mouldwright/making";
import { fine, type Outcome } from "mouldwright/measure";
import type { Section } from "mouldwright/section";
import type { FitChoices } from "./fit-choices.ts";

export interface FoundPlacing {
  readonly placing: Placing;
  readonly spring: Spring;
  /** Where the spring comes from. */
  readonly from: ToldSpring["toldBy"] | "as said";
}

/** What the maker says goes before what the section's bevels tell. Refused: a spring that is none. */
export function placingOf(
  section: Section,
  { springFromWallDeg, wallEdge }: Pick<FitChoices, "springFromWallDeg" | "wallEdge">,
): Outcome<FoundPlacing> {
  const told = springToldBy(section, wallEdge);
  const spring = springFrom("wall", springFromWallDeg ?? told.springFromWallDeg);
  if (!spring.ok) return spring;
  const { fromWallDeg } = spring.value;
  return fine({
    placing: { springFromWallDeg: fromWallDeg, wallEdge },
    spring: spring.value,
    from: springFromWallDeg === null ? told.toldBy : "as said",
  });
}
