/** The card for the bench and its pictures, from what `sheets/` draws. */
import type { Plan } from "mouldwright/cutting";
import {
  type BenchCardOptions,
  benchCardLines,
  drawCut,
  drawSection,
  drawStrip,
  type PictureOptions,
  writeSvg,
} from "mouldwright/sheets";

/** The card as text, no line longer than the columns. */
export function benchCard(plan: Plan, options: BenchCardOptions): string {
  return `${benchCardLines(plan, options).join("\n")}\n`;
}

export interface Picture {
  readonly name: string;
  readonly text: string;
}

/** The finished section, one picture of every cut, and the strip of all of them; names begin with `stem`. */
export function picturesOf(plan: Plan, stem: string, options: PictureOptions): readonly Picture[] {
  const figures = Math.max(2, String(plan.cuts.length).length);
  return [
    { name: `${stem}-section.svg`, text: writeSvg(drawSection(plan, options)) },
    { name: `${stem}-strip.svg`, text: writeSvg(drawStrip(plan, options)) },
    ...plan.cuts.map((cut) => ({
      name: `${stem}-cut-${String(cut.number).padStart(figures, "0")}.svg`,
      text: writeSvg(drawCut(plan, cut.number, options)),
    })),
  ];
}
