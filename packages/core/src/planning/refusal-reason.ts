/** What a rule's refusal of a cut comes to as the reason why a place stays uncut. */
import { isFlatKind, type UncutRule } from "../cutting/index.ts";
import type { Tool } from "./bench.ts";
import type { Refused } from "./order.ts";
import type { Stop } from "./what-stops.ts";
import { type BenchUnit, sayLength } from "./words.ts";

export interface Reason {
  readonly rule: UncutRule;
  readonly why: string;
  /** What can be done whatever is bought or changed; a cure that was planned takes its place. */
  readonly cure: string;
  /** What an own-radius plane meets, where that is what stops it: a cure begins there. */
  readonly stop?: Stop;
  readonly tool?: Tool;
  /** How deep a groove is that is too deep for the plane that would cut it, mm. */
  readonly deepMm?: number;
}

export const BY_HAND = "Work it with a scratch stock, a scraper or a carving tool.";

/** The reason that a refusal gives. */
export function refusalReason(unit: BenchUnit, { draft, refusal }: Refused): Reason {
  const length = (mm: number) => sayLength(mm, unit);
  const name = draft.tool.plane.name;
  const { rule, side, foundMm, limitMm } = refusal;
  switch (rule) {
    case "wall": {
      const isFlat = isFlatKind(draft.tool.plane.kind);
      const what = isFlat ? "sole" : "iron's corner";
      return {
        rule,
        why: `Beside the ${name} ${foundMm === undefined ? "" : `${length(foundMm)} of `}wood would stand${side ? ` on the ${side}` : ""}, and its ${what} clears ${limitMm === undefined ? "less" : `only ${length(limitMm)}`}.`,
        cure: isFlat ? BY_HAND : `Leave room beside it for a line or a rebate. ${BY_HAND}`,
        ...(isFlat && foundMm !== undefined ? { deepMm: foundMm } : {}),
      };
    }
    case "bench":
      return {
        rule,
        why: `The ${name} would run into the bench under the stick.`,
        cure: "Take a thicker stick and saw the spare off afterwards.",
      };
    case "body":
      return {
        rule,
        why: `The body of the ${name} is wider than its sole and meets standing wood beside it.`,
        cure: "Use a plane without shoulders, or lower the neighbouring part.",
      };
    case "loose wood":
      return {
        rule,
        why: `The cut of the ${name} would part off a piece of the stick.`,
        cure: "Take the waste off from an edge first, or saw the piece off.",
      };
    default:
      return {
        rule,
        why: `The ${name} finds no place to run here.`,
        cure: `Clamp a batten on. ${BY_HAND}`,
      };
  }
}
