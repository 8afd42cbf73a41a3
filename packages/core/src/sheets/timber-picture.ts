/** A timber: how a board of it moves, flat and quarter sawn, over a common year. */
import { movement, type Sawn, type Timber } from "../timber/index.ts";
import type { Drawing } from "./drawing.ts";
import { type FitPictureOptions, fitPage, type PagePanel } from "./fit-page.ts";
import { boardPanel } from "./movement-picture.ts";

/** The board that is drawn, and the moistures it goes between. */
const SHOWN = { widthMm: 100, fromPercent: 12, toPercent: 6 } as const;

export function drawTimber(timber: Timber, options: FitPictureOptions): Drawing {
  const panels = (["flat", "quarter"] as const).flatMap((sawn): readonly PagePanel[] => {
    const answer = movement({ timber, sawn, ...SHOWN });
    return answer.ok ? [boardPanel(answer.value, sawn, options.unit, headingOf(sawn))] : [];
  });
  const { hardness, note } = timber;
  const hard =
    hardness === null
      ? ""
      : ` Hardness on the side ${Math.round(hardness.newtons)} N (${Math.round(hardness.poundsForce)} lbf).`;
  return fitPage(
    {
      title: timber.name,
      notes: [
        `A board as it dries from ${SHOWN.fromPercent} to ${SHOWN.toPercent} % moisture, the movement drawn many times as large.${hard} ${note}`.trim(),
      ],
    },
    [{ heightMm: 66, panels }],
    options,
  );
}

function headingOf(sawn: Sawn): string {
  return sawn === "flat" ? "Flat sawn: rings along the width" : "Quarter sawn: rings across the width";
}
