/** Small pictures of all cuts, drawn one after another between whatever else the browser has to do. */
import type { Plan } from "mouldwright/cutting";
import { type Drawing, drawSmallScene } from "mouldwright/sheets";
import { useEffect, useState } from "react";

export const SMALL_PICTURE = { widthMm: 44, heightMm: 34 } as const;

const DRAWN = new WeakMap<Plan, ReadonlyMap<number, Drawing>>();
const NONE: ReadonlyMap<number, Drawing> = new Map();

/** By the cut's number, as far as they are drawn. Drawn once for a plan. */
export function useSmallPictures(plan: Plan): ReadonlyMap<number, Drawing> {
  const [drawn, setDrawn] = useState<{
    readonly plan: Plan;
    readonly pictures: ReadonlyMap<number, Drawing>;
  }>(() => ({ plan, pictures: DRAWN.get(plan) ?? NONE }));
  useEffect(() => {
    let timer = 0;
    const drawNext = (): void => {
      const known = DRAWN.get(plan) ?? NONE;
      const next = plan.cuts.find(({ number }) => !known.has(number));
      if (next === undefined) {
        setDrawn({ plan, pictures: known });
        return;
      }
      const picture = drawSmallScene(plan, next.number, SMALL_PICTURE, { unit: "mm" });
      const pictures = new Map(known).set(next.number, picture);
      DRAWN.set(plan, pictures);
      setDrawn({ plan, pictures });
      timer = window.setTimeout(drawNext, 0);
    };
    timer = window.setTimeout(drawNext, 0);
    return () => window.clearTimeout(timer);
  }, [plan]);
  return drawn.plan === plan ? drawn.pictures : NONE;
}
